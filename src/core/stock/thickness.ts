import { tQuantile } from '../../num/distributions.ts';
import { problemOf, type Problem } from '../problem.ts';
import { labelTolerance } from './labelTolerance.ts';
import type { Stock } from './stock.ts';

/** What the caliper says of a sheet. Lengths in mm. */
export interface ThicknessSummary {
  readonly count: number;
  readonly meanMm: number;
  /** Standard deviation of the readings; absent with fewer than two. */
  readonly sdMm?: number;
  readonly leastMm: number;
  readonly mostMm: number;
  /** Half-width of the 95 % interval of the mean. */
  readonly uncertaintyMm: number;
  /** The mean against the label, in per cent of the label. */
  readonly differencePct: number;
  readonly remarks: readonly Problem[];
}

/** Half-width of what a workshop caliper may be off by. Common practice, no source. */
const caliperHalfWidthMm = 0.03;
/** Below this a wrong label changes the speed less than a person sets it. Common practice, no source. */
const differenceWorthSayingPct = 3;

/**
 * Mean, spread and uncertainty of the thickness readings, and what is worth saying about them. Nothing when nobody
 * measured. The uncertainty joins the spread of the readings with the caliper's own (JCGM 100:2008, rectangular, degrees
 * of freedom by Welch and Satterthwaite).
 */
export const summariseThickness = (stock: Stock): ThicknessSummary | undefined => {
  const readings = stock.thicknessReadingsMm;
  const count = readings.length;
  if (count === 0) return undefined;
  const meanMm = readings.reduce((sum, reading) => sum + reading, 0) / count;
  const sdMm = Math.sqrt(
    readings.reduce((sum, reading) => sum + (reading - meanMm) ** 2, 0) / (count - 1),
  );
  const summary = {
    count,
    meanMm,
    ...(count > 1 ? { sdMm } : {}),
    leastMm: Math.min(...readings),
    mostMm: Math.max(...readings),
    uncertaintyMm: uncertaintyOfMean(count, count > 1 ? sdMm : 0),
    differencePct: (100 * (meanMm - stock.nominalThicknessMm)) / stock.nominalThicknessMm,
  };
  return { ...summary, remarks: remarksOn(stock, summary) };
};

const uncertaintyOfMean = (count: number, sdMm: number): number => {
  const byCaliper = caliperHalfWidthMm / Math.sqrt(3);
  const bySpread = sdMm / Math.sqrt(count);
  const combined = Math.hypot(byCaliper, bySpread);
  if (bySpread === 0) return 1.96 * combined;
  const degrees = (combined / bySpread) ** 4 * (count - 1);
  return tQuantile(0.975, degrees) * combined;
};

const remarksOn = (
  stock: Stock,
  summary: Omit<ThicknessSummary, 'remarks'>,
): readonly Problem[] => {
  const { meanMm, leastMm, mostMm, uncertaintyMm, differencePct, count } = summary;
  const remarks: Problem[] = [];
  const offByMm = Math.abs(meanMm - stock.nominalThicknessMm);
  if (offByMm > uncertaintyMm && Math.abs(differencePct) > differenceWorthSayingPct) {
    const shown = {
      meanMm: rounded(meanMm, 2),
      nominalMm: stock.nominalThicknessMm,
      uncertaintyMm: rounded(uncertaintyMm, 2),
      differencePct: rounded(Math.abs(differencePct), 0),
    };
    const allowed = labelTolerance(stock.material, stock.nominalThicknessMm);
    if (allowed !== undefined && (meanMm < allowed.leastMm || meanMm > allowed.mostMm))
      remarks.push(
        problemOf('label-beyond-standard', {
          ...shown,
          leastMm: rounded(allowed.leastMm, 2),
          mostMm: rounded(allowed.mostMm, 2),
          standard: allowed.source,
        }),
      );
    else remarks.push(problemOf('label-lies', shown));
  }
  // EN 324-1:1993 takes eight: each corner and each mid-side, about 50 mm in from the edge, mean to 0.1 mm.
  if (count === 1) remarks.push(problemOf('thickness-one-reading'));
  if (mostMm - leastMm > Math.max(0.3, 0.15 * meanMm))
    remarks.push(problemOf('thickness-readings-disagree', { leastMm, mostMm }));
  return remarks;
};

const rounded = (value: number, decimals: number): number => Number(value.toFixed(decimals));
