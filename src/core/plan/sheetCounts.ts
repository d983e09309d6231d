import type { SeededRandom } from '../../num/seededRandom.ts';
import { sheetPlaces, sheetPlaceWeights, type SheetOdds } from './planPoints.ts';

/** So many shapes cut at one speed, as they may end at each point. */
export interface CutOdds {
  readonly odds: SheetOdds;
  readonly parts: number;
}

/** How they ended. */
export interface SheetCount {
  readonly out: number;
  readonly hangs: number;
  readonly stays: number;
}

/** Cuts one sheet at one of the points by chance: all its cuts share the sheet's place among its fellows. */
export const playSheet = (
  cuts: readonly CutOdds[],
  point: number,
  count: number,
  random: SeededRandom,
): readonly SheetCount[] => {
  const at = placeBy(random.uniform()) * count + point;
  return cuts.map(({ odds, parts }) => {
    const pOut = odds.out[at] ?? NaN;
    const pHangs = odds.hangs[at] ?? NaN;
    let [out, hangs] = [0, 0];
    for (let part = 0; part < parts; part += 1) {
      const u = random.uniform();
      if (u < pOut) out += 1;
      else if (u < pOut + pHangs) hangs += 1;
    }
    return { out, hangs, stays: parts - out - hangs };
  });
};

const placeBy = (u: number): number => {
  let reached = 0;
  for (let place = 0; place < sheetPlaces.length; place += 1) {
    reached += sheetPlaceWeights[place] ?? NaN;
    if (u < reached) return place;
  }
  return sheetPlaces.length - 1;
};

/** The weights of the points after a sheet: each times the chance of this count there, averaged over the sheet's place. */
export const weighedBy = (
  weights: Float64Array,
  cuts: readonly CutOdds[],
  ends: readonly SheetCount[],
): Float64Array => {
  const count = weights.length;
  const logs = new Float64Array(sheetPlaces.length);
  const after = new Float64Array(count);
  let most = -Infinity;
  for (let i = 0; i < count; i += 1) {
    let highest = -Infinity;
    for (let place = 0; place < sheetPlaces.length; place += 1) {
      const at = place * count + i;
      let log = 0;
      for (let c = 0; c < cuts.length; c += 1) {
        const odds = cuts[c]?.odds;
        if (odds === undefined) continue;
        const { out, hangs, stays } = ends[c] ?? noCount;
        log +=
          out * (odds.lnOut[at] ?? NaN) +
          hangs * (odds.lnHangs[at] ?? NaN) +
          stays * (odds.lnStays[at] ?? NaN);
      }
      logs[place] = log;
      if (log > highest) highest = log;
    }
    let sum = 0;
    for (let place = 0; place < sheetPlaces.length; place += 1) {
      sum += (sheetPlaceWeights[place] ?? NaN) * Math.exp((logs[place] ?? NaN) - highest);
    }
    after[i] = highest + Math.log(sum);
    if ((weights[i] ?? NaN) > 0 && (after[i] ?? NaN) > most) most = after[i] ?? NaN;
  }
  let total = 0;
  for (let i = 0; i < count; i += 1) {
    const weight = (weights[i] ?? NaN) * Math.exp((after[i] ?? NaN) - most);
    after[i] = weight;
    total += weight;
  }
  for (let i = 0; i < count; i += 1) after[i] = (after[i] ?? NaN) / total;
  return after;
};

const noCount: SheetCount = { out: 0, hangs: 0, stays: 0 };
