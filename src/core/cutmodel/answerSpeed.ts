import { stepNotFaster, stepNotSlower } from '../machine/speedSteps.ts';

const rounding = 1e-9;

/** An answer is rounded down to 0.1 mm/s, so that rounding never breaks a promise. */
export const answerSpeed = (speedMmPerS: number): number =>
  Math.round(Math.floor(speedMmPerS * 10 + rounding)) / 10;

/** One step surer: at least 5 % slower, on the next speed that people type. */
export const oneStepSurer = (speedMmPerS: number): number => stepNotFaster(0.95 * speedMmPerS);

/** One step faster: at least 5 % faster, on the next speed that people type. */
export const oneStepFaster = (speedMmPerS: number): number => stepNotSlower(1.05 * speedMmPerS);
