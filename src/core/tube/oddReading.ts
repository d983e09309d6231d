import type { Machine, TubePoint } from '../machine/machine.ts';

/** A reading that cannot be right beside the others, or beside the rating. */
export interface OddReading extends TubePoint {
  /** `falls`: much less than at a lower setting. `tiny`: as if it were in another unit than the rating. */
  readonly odd: 'falls' | 'tiny';
}

/** Readings scatter by some per cent; a tube that draws a quarter less at a higher setting is a slip. Judgement, no source. */
const mostFall = 0.75;
/** In proportion, the rating would be reached at so many per cent of setting: a reading in A beside a rating in mA. */
const mostReachPct = 1000;
/** Below this a tube may well be dark, or hardly fire. */
const firesSurelyPct = 30;

/**
 * The first reading that was probably mistyped; undefined where there is none, or nothing is limited by them because no
 * rated current is known.
 */
export const oddReading = ({
  ratedCurrentMa,
  tubePoints = [],
}: Pick<Machine, 'ratedCurrentMa' | 'tubePoints'>): OddReading | undefined => {
  if (ratedCurrentMa === undefined) return undefined;
  const falls = tubePoints.find((point) =>
    tubePoints.some(
      (lower) => lower.powerPct < point.powerPct && point.currentMa < mostFall * lower.currentMa,
    ),
  );
  if (falls !== undefined) return { ...falls, odd: 'falls' };
  const most = tubePoints.reduce<TubePoint | undefined>(
    (highest, point) => (highest && highest.powerPct >= point.powerPct ? highest : point),
    undefined,
  );
  return most !== undefined &&
    most.powerPct >= firesSurelyPct &&
    most.currentMa > 0 &&
    (most.powerPct * ratedCurrentMa) / most.currentMa > mostReachPct
    ? { ...most, odd: 'tiny' }
    : undefined;
};
