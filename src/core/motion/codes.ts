/** Why a machine's motion cannot be told from the times of jobs. */
export const motionCodes = [
  'motion-too-few-jobs',
  'motion-time-impossible',
  'motion-times-disagree',
] as const;

export type MotionCode = (typeof motionCodes)[number];
