import type { SpeedAlong } from '../motion/speedAlong.ts';

/** A stretch about one corner or end in which the head is slowed. Places in mm from the line's start. */
export interface SlowedStretch {
  /** Below 0 where a line that loops is slowed before its end too: its start and its end are one place. */
  readonly fromMm: number;
  readonly toMm: number;
  /** Where it is slowest, and how fast it is there. */
  readonly atMm: number;
  readonly leastMmPerS: number;
  /** The fastest before the next slowed stretch of the line; undefined where it gets up to speed. */
  readonly peakToNextMmPerS?: number;
  readonly toNextMm?: number;
}

/** A head is called slowed below this share of the set speed. */
export const slowedShare = 0.95;

/** Two dips are two places only where the speed rises between them by this share of the set speed. */
const riseShare = 0.04;

/** Dips nearer to one another than this are one place: the kerf does not tell them apart. */
const onePlaceMm = 0.5;

/**
 * The slowed stretches of a planned line, in order: one for each corner, end or short curve where the speed falls below
 * 0.95 of what is set. O(knots).
 */
export const slowedStretches = (
  speeds: SpeedAlong,
  setMmPerS: number,
  loops: boolean,
): readonly SlowedStretch[] => {
  const dips = together(dipsOf(speeds, setMmPerS), setMmPerS);
  const found = dips.map((dip, i): SlowedStretch => {
    const next = dips[i + 1];
    const { fromMm, toMm, atMm, leastMmPerS } = dip;
    return {
      ...{ fromMm, toMm, atMm, leastMmPerS },
      ...(next !== undefined && dip.peakAfter < slowedShare * setMmPerS
        ? { peakToNextMmPerS: dip.peakAfter, toNextMm: next.atMm - dip.atMm }
        : {}),
    };
  });
  const [first, last] = [found[0], found.at(-1)];
  if (!loops || first === undefined || last === undefined || first === last) return found;
  // The seam: the last stretch is the first one's other half.
  const seam = { ...first, fromMm: Math.min(0, last.fromMm - speeds.lengthMm) };
  return [seam, ...found.slice(1, -1)];
};

interface Dip {
  readonly fromMm: number;
  readonly toMm: number;
  readonly atMm: number;
  readonly leastMmPerS: number;
  readonly peakAfter: number;
}

const dipsOf = ({ atMm, speedMmPerS }: SpeedAlong, setMmPerS: number): readonly Dip[] => {
  const [limit, rise] = [slowedShare * setMmPerS, riseShare * setMmPerS];
  const dips: Dip[] = [];
  let falling = true;
  let [least, leastAt, peak, peakAt] = [Infinity, 0, -Infinity, 0];
  // Where the speed last fell below the limit, and where it first rose above it after the dip.
  let [wentBelow, cameAbove]: (number | undefined)[] = [0, undefined];
  let from = 0;
  const close = (toMm: number, peakAfter: number): void => {
    if (least < limit)
      dips.push({ fromMm: from, toMm, atMm: leastAt, leastMmPerS: least, peakAfter });
  };
  for (let i = 0; i < atMm.length; i += 1) {
    const [at, speed] = [atMm[i] ?? NaN, speedMmPerS[i] ?? NaN];
    const [atBefore, before] = [atMm[i - 1] ?? at, speedMmPerS[i - 1] ?? speed];
    if (before < limit !== speed < limit) {
      const share = (limit * limit - before * before) / (speed * speed - before * before);
      const crossing = atBefore + share * (at - atBefore);
      if (speed < limit) wentBelow = crossing;
      else cameAbove ??= crossing;
    }
    let closed = false;
    if (falling) {
      if (speed < least) [least, leastAt] = [speed, at];
      if (speed >= least + rise) [falling, peak, peakAt] = [false, speed, at];
    } else {
      if (speed > peak) [peak, peakAt] = [speed, at];
      if (speed <= peak - rise) {
        close(cameAbove ?? peakAt, peak);
        from = peak >= limit ? (wentBelow ?? at) : peakAt;
        [falling, least, leastAt] = [true, speed, at];
        closed = true;
      }
    }
    // Below once more without having been well above: the stretch goes on.
    if (closed || (speed < limit && before >= limit)) cameAbove = undefined;
  }
  close(falling ? (atMm.at(-1) ?? 0) : (cameAbove ?? atMm.at(-1) ?? 0), Infinity);
  return dips;
};

const together = (dips: readonly Dip[], setMmPerS: number): readonly Dip[] => {
  const found: Dip[] = [];
  for (const dip of dips) {
    const last = found.at(-1);
    const apart =
      last === undefined ||
      dip.atMm - last.atMm >= onePlaceMm ||
      last.peakAfter >= slowedShare * setMmPerS;
    if (apart) found.push(dip);
    else {
      const slowest = dip.leastMmPerS < last.leastMmPerS ? dip : last;
      found[found.length - 1] = {
        fromMm: last.fromMm,
        toMm: dip.toMm,
        atMm: slowest.atMm,
        leastMmPerS: slowest.leastMmPerS,
        peakAfter: dip.peakAfter,
      };
    }
  }
  return found;
};
