import { kronecker } from '../../num/kronecker.ts';
import { bracketedRoot } from '../../num/bracketedRoot.ts';
import { tCdf } from '../../num/distributions.ts';
import { normalCdf } from '../../num/normal.ts';
import {
  combineUncertainty,
  coverageFactor,
  limitsUncertainty,
  meanOfReadings,
} from '../../num/uncertainty.ts';
import { done, refused, type Outcome } from '../problem.ts';
import { combDirections, kerfsOf, type CombMeasure, type KerfComb } from './kerfComb.ts';
import type { Kerf, KerfDoubt, KerfEstimate } from './kerf.ts';
import { kerfRemarks } from './kerfRemarks.ts';

/**
 * The kerf of one setting on one sheet: (width as drawn − strips pushed together) / kerfs; with a bar beside the comb,
 * (bar − strips) / (strips − 1), from which the machine's scale and the caliper's own error fall out. Of several combs it
 * is that of the sheet, and what differs between places is part of its uncertainty; of one comb, that of its place.
 * Refuses: `kerf-no-comb`, `kerf-not-positive`.
 */
export const kerfFromCombs = (
  combs: readonly KerfComb[],
  measure: CombMeasure,
): Outcome<KerfEstimate> => {
  const byCombMm = combs.map((comb) => kerfOfComb(comb, measure));
  const found = kerfOf(combs, measure);
  if (found === null) return refused('kerf-no-comb');
  if (!(found.kerfMm > 0))
    return refused('kerf-not-positive', { kerfMm: Number(found.kerfMm.toFixed(3)) });
  const byDirection = combDirections.flatMap((direction) => {
    const one = kerfOf(
      combs.filter((comb) => comb.direction === direction),
      measure,
    );
    return one === null ? [] : [{ ...one, direction }];
  });
  return done({
    ...found,
    byDirection: byDirection.length > 1 ? byDirection : [],
    byCombMm,
    remarks: kerfRemarks(combs, found, byDirection),
  });
};

/** Half of what may be left between two strips stands between them, as far as anybody knows. */
const kerfOfComb = (comb: KerfComb, { gapMm }: CombMeasure): number => {
  const wholeMm = comb.barMm === undefined ? comb.nominalMm : mean(comb.barMm);
  const stripsMm = mean(comb.measuredMm) - ((comb.strips - 1) * gapMm) / 2;
  return (wholeMm - stripsMm) / kerfsOf(comb);
};

const kerfOf = (combs: readonly KerfComb[], measure: CombMeasure): Kerf | null => {
  if (combs.length === 0) return null;
  const doubts = [...readingDoubts(combs, measure), ...limitDoubts(combs, measure)].filter(
    ({ uMm }) => uMm > 0,
  );
  const { combined, effectiveDegrees } = combineUncertainty(
    doubts.map(({ uMm, degrees }) => ({ sensitivity: 1, u: uMm, degrees })),
  );
  const expandedMm = reachOf(doubts);
  return {
    kerfMm: mean(combs.map((comb) => kerfOfComb(comb, measure))),
    standardMm: combined,
    degrees: effectiveDegrees,
    expandedMm,
    coverageFactor: combined > 0 ? expandedMm / combined : 2,
    doubts,
  };
};

/** What one reading strays where it was taken once, mm. Common practice, no source. */
const oneReadingSdMm = 0.02;

/**
 * Of several combs their own scatter, which holds what differs between places, hands and steps of the caliper alike. Of
 * one comb the scatter of its readings, and the caliper's step where the readings do not scatter across it.
 */
const readingDoubts = (combs: readonly KerfComb[], measure: CombMeasure): readonly KerfDoubt[] => {
  const between = meanOfReadings(combs.map((comb) => kerfOfComb(comb, measure)));
  if (between !== null) {
    return [
      {
        from: 'readings',
        uMm: Math.max(between.u, stepDoubt(combs, measure)),
        degrees: between.degrees,
      },
    ];
  }
  const [comb] = combs;
  if (comb === undefined) return [];
  const kerfs = kerfsOf(comb);
  const series = [comb.measuredMm, ...(comb.barMm === undefined ? [] : [comb.barMm])].map(
    (readings) =>
      meanOfReadings(readings) ?? { sd: oneReadingSdMm, u: oneReadingSdMm, degrees: Infinity },
  );
  const { combined, effectiveDegrees } = combineUncertainty(
    series.map(({ u, degrees }) => ({ sensitivity: 1 / kerfs, u, degrees })),
  );
  const scatters = series.every(({ sd }) => sd > measure.resolutionMm / 2);
  return [
    { from: 'readings', uMm: combined, degrees: effectiveDegrees },
    ...(scatters
      ? []
      : [{ from: 'step' as const, uMm: stepDoubt(combs, measure), degrees: Infinity }]),
  ];
};

/** A caliper's step leaves the mean of readings that agree open by half of it to either side. */
const stepDoubt = (combs: readonly KerfComb[], { resolutionMm }: CombMeasure): number =>
  mean(combs.map((comb) => limitsUncertainty(resolutionMm / 2) / kerfsOf(comb))) /
  Math.sqrt(combs.length);

/** What is off alike for every comb: it does not average out. */
const limitDoubts = (
  combs: readonly KerfComb[],
  { caliperLimitMm, scaleLimitPct, gapMm }: CombMeasure,
): readonly KerfDoubt[] => {
  const ofAll = (from: KerfDoubt['from'], halfWidthMm: (comb: KerfComb) => number): KerfDoubt => ({
    from,
    uMm: limitsUncertainty(mean(combs.map((comb) => halfWidthMm(comb) / kerfsOf(comb)))),
    degrees: Infinity,
  });
  const withoutBar = (comb: KerfComb, mm: number): number => (comb.barMm === undefined ? mm : 0);
  return [
    ofAll('caliper', (comb) => withoutBar(comb, caliperLimitMm)),
    ofAll('scale', (comb) => withoutBar(comb, (comb.nominalMm * scaleLimitPct) / 100)),
    ofAll('gaps', ({ strips }) => ((strips - 1) * gapMm) / 2),
  ];
};

const coverage = 0.95;
/** Of the limits, together: what the readings leave open smooths what lies between them. */
const limitPoints = 64;
/** Where no reading leaves anything open, nothing does. */
const alonePoints = 4096;

/**
 * How far to either side the sum of all doubts reaches 95 times in 100: readings by Student's t, limits as rectangles,
 * propagated as distributions (JCGM 101:2008) over quasi-random points. Twice the standard uncertainty would reach too far
 * where one limit outweighs the rest, and not far enough behind few readings.
 */
const reachOf = (doubts: readonly KerfDoubt[]): number => {
  const limits = doubts.filter(({ from }) => from !== 'readings');
  const readings = doubts.find(({ from }) => from === 'readings');
  if (readings === undefined) {
    const sums = limitSums(limits, alonePoints).map(Math.abs).sort();
    return sums[Math.ceil(coverage * alonePoints) - 1] ?? NaN;
  }
  const { uMm, degrees } = readings;
  const below = (mm: number): number =>
    degrees === Infinity ? normalCdf(mm / uMm) : tCdf(mm / uMm, degrees);
  const sums = limitSums(limits, limits.length === 0 ? 1 : limitPoints);
  const within = (mm: number): number =>
    sums.reduce((sum, at) => sum + below(mm - at) - below(-mm - at), 0) / sums.length - coverage;
  const alone = uMm * coverageFactor(coverage, degrees, { wholeDegrees: false });
  const farthest = sums.reduce((most, at) => Math.max(most, Math.abs(at)), 0);
  return bracketedRoot(within, { low: 0, high: alone + farthest, relative: 1e-6 })?.x ?? NaN;
};

/** What all limits add up to, at points that fill what they leave open. */
const limitSums = (limits: readonly KerfDoubt[], count: number): Float64Array => {
  const cube = kronecker(limits.length);
  return Float64Array.from({ length: count }, (_, i) =>
    limits.reduce((sum, { uMm }, k) => sum + uMm * Math.sqrt(3) * (2 * cube.at(i, k) - 1), 0),
  );
};

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
