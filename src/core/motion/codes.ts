/** Why a machine's motion cannot be told from the times of jobs. */
export const motionCodes = [
  'motion-too-few-jobs',
  'motion-time-impossible',
  'motion-times-disagree',
] as const;

/** What may be said instead of the time of a file, or beside it. */
export const timeCodes = ['time-nothing-cut', 'time-speed-unknown', 'time-motion-assumed'] as const;

export type MotionCode = (typeof motionCodes)[number];
export type TimeCode = (typeof timeCodes)[number];
