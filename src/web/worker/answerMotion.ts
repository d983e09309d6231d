import { fitMotion } from '../../core/motion/fitMotion.ts';
import type { MotionQuestion, MotionReply } from './motionMessages.ts';

/** What the thread says to timed jobs. */
export const answerMotion = (jobs: MotionQuestion): MotionReply => {
  try {
    return { kind: 'fitted', fit: fitMotion(jobs) };
  } catch (error) {
    return { kind: 'broke', message: error instanceof Error ? error.message : String(error) };
  }
};
