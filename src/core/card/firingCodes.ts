/** Why a part of a job may not fire as it was asked to. */
export const firingCodes = [
  'fires-above-machine',
  'fires-above-rated',
  'fires-beyond-speeds',
  'fires-above-ceiling',
  'fires-would-cut',
] as const;
export type FiringCode = (typeof firingCodes)[number];
