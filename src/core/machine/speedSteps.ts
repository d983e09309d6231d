/** A card's speeds go in steps of 0.5 mm/s, below 5 mm/s in steps of 0.1: what people type. */
const stepAt = (speedMmPerS: number): number => (speedMmPerS < 5 ? 0.1 : 0.5);

const tidy = (value: number): number => Number(value.toFixed(1));

/** The step nearest to a speed; never below 0.1 mm/s. */
export const nearestStep = (speedMmPerS: number): number => {
  const step = stepAt(speedMmPerS);
  return Math.max(0.1, tidy(Math.round(speedMmPerS / step) * step));
};

/** The lowest step that is not slower. */
export const stepNotSlower = (speedMmPerS: number): number => {
  const step = stepAt(speedMmPerS);
  return Math.max(0.1, tidy(Math.ceil(speedMmPerS / step - 1e-9) * step));
};

/** The highest step that is not faster. */
export const stepNotFaster = (speedMmPerS: number): number => {
  const step = stepAt(speedMmPerS);
  return Math.max(0.1, tidy(Math.floor(speedMmPerS / step + 1e-9) * step));
};

/** The next faster step. */
export const nextStep = (speedMmPerS: number): number =>
  tidy(nearestStep(speedMmPerS) + stepAt(nearestStep(speedMmPerS)));
