import type { CornerRule, MotionValues } from './motionValues.ts';

export const motionUnknowns = [
  'acceleration',
  'corner',
  'travelSpeed',
  'travelAcceleration',
  'lineDelay',
  'jobDelay',
] as const;
export type MotionUnknown = (typeof motionUnknowns)[number];

/** Where an unknown may lie, and where it is believed to lie before anything was timed. */
interface Belief {
  readonly mean: number;
  readonly sd: number;
  readonly least: number;
  readonly most: number;
}

const ln = (mean: number, sd: number, least: number, most: number): Belief => ({
  mean: Math.log(mean),
  sd,
  least: Math.log(least),
  most: Math.log(most),
});

/**
 * All but the delays in natural logarithms; acceleration in travel as a multiple of that with the beam on; delays in s.
 * Wide on purpose: they decide only where the jobs say nothing. From memory of common controllers, unconfirmed.
 */
const beliefs: Readonly<Record<CornerRule['rule'], Readonly<Record<MotionUnknown, Belief>>>> =
  (() => {
    const common = {
      acceleration: ln(900, 1, 20, 50_000),
      travelSpeed: ln(250, 0.7, 5, 5000),
      travelAcceleration: ln(1.3, 0.5, 0.1, 20),
      lineDelay: { mean: 0.03, sd: 0.06, least: 0, most: 3 },
      jobDelay: { mean: 1, sd: 3, least: 0, most: 120 },
    };
    return {
      'junction-deviation': { ...common, corner: ln(0.02, 1.2, 1e-4, 5) },
      'speed-jump': { ...common, corner: ln(8, 0.8, 0.1, 500) },
    };
  })();

/** What is believed of each unknown under a corner rule, in the order of {@link motionUnknowns}. */
export const believedUnder = (rule: CornerRule['rule']): readonly Belief[] =>
  motionUnknowns.map((name) => beliefs[rule][name]);

/** The machine that some unknowns describe, in the order of {@link motionUnknowns}. */
export const motionFrom = (
  rule: CornerRule['rule'],
  [
    acceleration = 0,
    corner = 0,
    travelSpeed = 0,
    travelAcceleration = 0,
    lineDelay = 0,
    jobDelay = 0,
  ]: readonly number[],
): MotionValues => {
  const accelerationMmPerS2 = Math.exp(acceleration);
  const figure = Math.exp(corner);
  return {
    accelerationMmPerS2,
    corner:
      rule === 'junction-deviation'
        ? { rule, deviationMm: figure }
        : { rule, xMmPerS: figure, yMmPerS: figure },
    travelSpeedMmPerS: Math.exp(travelSpeed),
    travelAccelerationMmPerS2: accelerationMmPerS2 * Math.exp(travelAcceleration),
    lineDelayS: lineDelay,
    jobDelayS: jobDelay,
  };
};
