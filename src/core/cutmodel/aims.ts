import type { LinePoint } from './fitAnswer.ts';

/** What the workshop prefers among settings that keep the promise. */
export type Aim = 'fastest' | 'gentlest' | 'cleanest';

/** A gentler setting is not worth having if it takes more than this many times as long. */
const mostTimes = 1.6;

/**
 * Which point of the line of the fastest speed that holds suits an aim; undefined where the line is empty.
 * fastest: the highest speed. gentlest: the least power (so the least tube current) that is not slower than the fastest by
 * more than {@link mostTimes}. cleanest: the least line energy, power over speed, since char grows with it.
 * Common practice, no source.
 */
export const pointForAim = (line: readonly LinePoint[], aim: Aim): LinePoint | undefined => {
  const fastest = best(line, (point) => point.speedMmPerS);
  if (aim === 'fastest' || !fastest) return fastest;
  const quick = line.filter((point) => point.speedMmPerS * mostTimes >= fastest.speedMmPerS);
  return aim === 'gentlest'
    ? best(quick, (point) => -point.powerPct)
    : best(quick, (point) => point.speedMmPerS / (point.currentMa ?? point.powerPct));
};

const best = (
  line: readonly LinePoint[],
  merit: (point: LinePoint) => number,
): LinePoint | undefined =>
  line.reduce<LinePoint | undefined>(
    (leader, point) => (leader && merit(leader) >= merit(point) ? leader : point),
    undefined,
  );
