import type { MotionCode, TimeCode } from '../../core/problems/motion.ts';
import type { Sentences } from '../shape/sentence.ts';

export const motionWords = {
  'motion-too-few-jobs': {
    message: (p) => `${p.jobs} timed jobs do not show how the machine moves; it takes ${p.least}.`,
    remedy: (p) => `Time ${p.least} of the jobs at least, better six, with the beam disarmed.`,
  },
  'motion-time-impossible': {
    message: (p) =>
      `Job ${p.job} is said to have taken ${p.seconds} s, but at the speed that it asks for its lines alone take ${p.leastSeconds} s.`,
    remedy: () =>
      'Check the time that was noted, and that the job ran at its own speed, without an override. Run it again with the beam disarmed.',
  },
  'motion-times-disagree': {
    message: (p) =>
      `No machine fits these times: they are ${p.offPct} % off in the mean, job ${p.job} most of all.`,
    remedy: (p) =>
      `Time job ${p.job} again with the beam disarmed. If it takes as long as before, the controller moves by rules that are not known here: estimates then stay wide.`,
  },
  'time-nothing-cut': {
    message: () => 'There is no line in this file that would be cut.',
    remedy: () =>
      'Check that it is the right file, and that its lines are paths rather than text or pictures.',
  },
  'time-speed-unknown': {
    message: (p) => `The file says no speed for ${p.lines} of its lines.`,
    remedy: () => 'Give the speed with --speed, in mm/s; it stands for every line that has none.',
  },
  'time-motion-assumed': {
    message: () =>
      'How this machine moves is not known, so the time is that of a common one, and the band that of a slow and a quick one.',
    remedy: () =>
      'Give a machine file with motion: from a few jobs timed with the beam disarmed, or from the controller’s own settings.',
  },
} satisfies Sentences<MotionCode | TimeCode>;
