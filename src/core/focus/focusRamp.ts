import { done, refused, type Outcome } from '../problem.ts';

/** A straight strip with a block under its far end, on which a line is drawn uphill while the head stays at one height. */
export interface FocusRamp {
  /** From the strip's low edge to where it rests on the block, along the strip, mm. */
  readonly lengthMm: number;
  /** Height of the block under that end, mm: how far the strip rises. */
  readonly blockMm: number;
  /** From the nozzle (or whatever the height is measured from) down to the strip at its low edge, mm. */
  readonly nozzleGapMm: number;
}

/** What is left between the nozzle and the high end of a ramp at least, mm. Rule of this tool. */
export const leastClearanceMm = 3;
/** A ramp that rises by less shows little of the beam, mm; one that rises steeper than this slides. */
const leastRiseMm = 1;
const steepest = 0.25;
/** What binary arithmetic leaves over. */
const dustMm = 1e-9;
/** Shorter ones leave no room for a line. */
const shortestMm = 60;

/** The sine of the strip's slope: height gained by each mm along it. */
export const sineOf = ({ blockMm, lengthMm }: FocusRamp): number => blockMm / lengthMm;

/** The gap between nozzle and strip, at so many mm along it. */
export const gapAtMm = (ramp: FocusRamp, alongMm: number): number =>
  ramp.nozzleGapMm - alongMm * sineOf(ramp);

/** Where along the strip the gap has a size. */
export const alongAtMm = (ramp: FocusRamp, gapMm: number): number =>
  (ramp.nozzleGapMm - gapMm) / sineOf(ramp);

/**
 * A ramp that may be put under the head. Refuses a rise that leaves less than 3 mm below the nozzle (`ramp-meets-nozzle`),
 * and one that is too short, too flat or too steep.
 */
export const checkedRamp = (ramp: FocusRamp): Outcome<FocusRamp> => {
  const { lengthMm, blockMm, nozzleGapMm } = ramp;
  const mostMm = round(nozzleGapMm - leastClearanceMm);
  if (!(blockMm <= nozzleGapMm - leastClearanceMm + dustMm))
    return refused('ramp-meets-nozzle', { blockMm, nozzleGapMm, mostMm: Math.max(0, mostMm) });
  if (!(lengthMm >= shortestMm))
    return refused('ramp-too-short', { lengthMm, leastMm: shortestMm });
  if (!(blockMm >= leastRiseMm)) return refused('ramp-too-flat', { blockMm, leastMm: leastRiseMm });
  if (!(sineOf(ramp) <= steepest))
    return refused('ramp-too-steep', { lengthMm, blockMm, leastMm: Math.ceil(blockMm / steepest) });
  return done(ramp);
};

/** How far to each side of the believed focus a ramp need not reach beyond, mm. */
const enoughMm = 5;
/** A focus that lies nearer to the nozzle than this leaves no room for a ramp, mm. */
const nearestMm = leastClearanceMm + leastRiseMm;

/**
 * A ramp about a gap at which the focus is believed to lie, as tall as the clearance allows. Refuses where the nozzle
 * stands too near for any (`ramp-no-room`).
 */
export const rampAbout = (believedGapMm: number, lengthMm: number): Outcome<FocusRamp> => {
  if (!(believedGapMm >= nearestMm))
    return refused('ramp-no-room', { gapMm: believedGapMm, leastMm: nearestMm });
  const toEachSideMm = Math.min(
    enoughMm,
    believedGapMm - leastClearanceMm,
    (steepest * lengthMm) / 2,
  );
  const nozzleGapMm = Math.ceil(10 * (believedGapMm + toEachSideMm) - dustMm) / 10;
  const blockMm =
    Math.floor(10 * Math.min(2 * toEachSideMm, nozzleGapMm - leastClearanceMm) + dustMm) / 10;
  return checkedRamp({ lengthMm, blockMm, nozzleGapMm });
};

const round = (mm: number): number => Number(mm.toFixed(2));
