import type { MotionValues } from './motionValues.ts';

/**
 * What is assumed of a machine whose motion nobody has measured: a common one, and a quick and a slow one between which it
 * lies as good as always. Common practice, no source.
 */
export const assumedMotion: Readonly<Record<'likely' | 'quick' | 'slow', MotionValues>> = {
  likely: {
    accelerationMmPerS2: 800,
    corner: { rule: 'speed-jump', xMmPerS: 6, yMmPerS: 6 },
    travelSpeedMmPerS: 200,
    lineDelayS: 0.02,
  },
  quick: {
    accelerationMmPerS2: 4000,
    corner: { rule: 'speed-jump', xMmPerS: 20, yMmPerS: 20 },
    travelSpeedMmPerS: 400,
  },
  slow: {
    accelerationMmPerS2: 200,
    corner: { rule: 'speed-jump', xMmPerS: 2, yMmPerS: 2 },
    travelSpeedMmPerS: 80,
    lineDelayS: 0.12,
    jobDelayS: 5,
  },
};

/** Where a machine's motion was typed in rather than fitted, its times are trusted this far. Common practice, no source. */
const typedErrorPct = 5;

/** How far a time worked out with these values may be off: a standard deviation, in per cent. */
export const timeErrorPctOf = ({ timeErrorPct = typedErrorPct }: MotionValues): number =>
  timeErrorPct;

/**
 * A time with its band: two standard deviations either way where the motion is known; else from a quick to a slow machine.
 */
export const timeBand = (
  motion: MotionValues | undefined,
  secondsOn: (motion: MotionValues) => number,
): {
  readonly seconds: number;
  readonly lowSeconds: number;
  readonly highSeconds: number;
  readonly motion: 'known' | 'assumed';
} => {
  if (motion === undefined) {
    return {
      seconds: secondsOn(assumedMotion.likely),
      lowSeconds: secondsOn(assumedMotion.quick),
      highSeconds: secondsOn(assumedMotion.slow),
      motion: 'assumed',
    };
  }
  const seconds = secondsOn(motion);
  const factor = 1 + (2 * timeErrorPctOf(motion)) / 100;
  return { seconds, lowSeconds: seconds / factor, highSeconds: seconds * factor, motion: 'known' };
};
