import type { MotionCode } from '../../core/motion/codes.ts';
import type { Sentence } from '../sentence.ts';

export const motionWords = {
  'motion-too-few-jobs': {
    message: (p) =>
      `${p('jobs')} timed jobs do not show how the machine moves; it takes ${p('least')}.`,
    remedy: (p) => `Time ${p('least')} of the jobs at least, better six, with the beam disarmed.`,
  },
  'motion-time-impossible': {
    message: (p) =>
      `Job ${p('job')} is said to have taken ${p('seconds')} s, but at the speed that it asks for its lines alone take ${p('leastSeconds')} s.`,
    remedy: () =>
      'Check the time that was noted, and that the job ran at its own speed, without an override. Run it again with the beam disarmed.',
  },
  'motion-times-disagree': {
    message: (p) =>
      `No machine fits these times: they are ${p('offPct')} % off in the mean, job ${p('job')} most of all.`,
    remedy: (p) =>
      `Time job ${p('job')} again with the beam disarmed. If it takes as long as before, the controller moves by rules that are not known here: estimates then stay wide.`,
  },
} satisfies Record<MotionCode, Sentence>;
