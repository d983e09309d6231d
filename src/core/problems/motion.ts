import { figure, type ProblemList } from './param.ts';

/** Why a machine's motion cannot be told from the times of jobs. */
export const motionProblems = {
  'motion-too-few-jobs': { jobs: figure, least: figure },
  'motion-time-impossible': { job: figure, seconds: figure, leastSeconds: figure },
  'motion-times-disagree': { job: figure, offPct: figure },
} as const satisfies ProblemList;

/** What may be said instead of the time of a file, or beside it. */
export const timeProblems = {
  'time-nothing-cut': {},
  'time-speed-unknown': { lines: figure },
  'time-motion-assumed': {},
} as const satisfies ProblemList;

export type MotionCode = keyof typeof motionProblems;

export type TimeCode = keyof typeof timeProblems;
