/** Speeds on a card or one step of an answer: 0.5 mm/s, 0.1 below 5 mm/s. */
const stepAt = (speedMmPerS: number): number => (speedMmPerS < 5 ? 0.1 : 0.5);

const rounding = 1e-9;

/** The next typed speed at or below. */
export const stepDown = (speedMmPerS: number): number => {
  const step = stepAt(speedMmPerS - rounding);
  return clean(Math.floor(speedMmPerS / step + rounding) * step);
};

/** The next typed speed at or above. */
export const stepUp = (speedMmPerS: number): number => {
  const step = stepAt(speedMmPerS);
  return clean(Math.ceil(speedMmPerS / step - rounding) * step);
};

/** The nearest typed speed. */
export const nearestStep = (speedMmPerS: number): number => {
  const step = stepAt(speedMmPerS);
  return clean(Math.max(0.1, Math.round(speedMmPerS / step) * step));
};

/** An answer is rounded down, so that rounding never breaks a promise. */
export const answerSpeed = (speedMmPerS: number): number =>
  clean(Math.floor(speedMmPerS * 10 + rounding) / 10);

/** One step surer: at least 5 % slower, on the next typed speed. */
export const oneStepSurer = (speedMmPerS: number): number => stepDown(0.95 * speedMmPerS);

/** One step faster: at least 5 % faster, on the next typed speed. */
export const oneStepFaster = (speedMmPerS: number): number => stepUp(1.05 * speedMmPerS);

const clean = (value: number): number => Math.round(value * 1000) / 1000;
