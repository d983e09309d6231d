import { roughWeightedQuantile } from '../../num/weightedQuantile.ts';
import type { EdgeGrade, EdgeKind } from '../reading/edge.ts';
import {
  countedBySetting,
  heatChanges,
  heatFrom,
  isOnePower,
  logistic,
  lognormal,
  weightsOf,
  type HeatChange,
  type HeatSpot,
} from './heat.ts';
import { asRead } from './reading.ts';

/** Where an edge was cut, and how it came out. */
export interface EdgeCut extends HeatSpot {
  readonly edge: EdgeGrade;
  /** So many alike. */
  readonly count: number;
}

/** Of 100 edges cut at a setting, how many are of the best grade. */
export interface EdgeShare {
  /** On average over what is known. */
  readonly meanOf100: number;
  /** Nine times in ten at least so many. */
  readonly atLeastOf100: number;
}

export interface EdgeBeliefs {
  readonly shareAt: (spot: HeatSpot) => EdgeShare;
  /** How sure it is that more edges are of the best grade at one setting than at another, 0–100. */
  readonly surelyBetterPct: (one: HeatSpot, other: HeatSpot) => number;
}

/** Grades in the order of the heat that they take. */
const byHeat: Readonly<Record<EdgeKind, readonly [EdgeGrade, EdgeGrade, EdgeGrade]>> = {
  wood: ['clean', 'brown', 'black'],
  acrylic: ['frosted', 'clear', 'flamed'],
};

/** Newest settings that are looked at: a card has a dozen. */
const mostSettings = 60;

/** A grade is misread as each other grade with half this probability, as a shape's own is. */
const misread = 0.01;

/**
 * Which quantile of what is known is called "at least": where one setting is chosen among several, this one is kept nine times
 * in ten (the simulation beside `preferEdge`). An edge is looks, and no promise of parts.
 */
const atLeastAt = 0.05;

/** Heat from the first change to the second, in ln. By judgement, no source. */
const widths = lognormal(9, 0.3, 1);
/** Over how much heat a change is spread, in ln. By judgement, no source. */
const spreads = lognormal(6, 0.1, 0.8);

/**
 * What graded edges let expect at other settings: an ordinal model in the heat that a cut leaves in the edge,
 * ln heat = c·ln power − ln speed. Each material's three grades follow each other as heat rises (wood: clean, brown, black;
 * acrylic: frosted, clear, flamed), the changes spread as a logistic. The posterior stands on a fixed grid: no chance in it.
 * Give at least one cut. O(settings), some ms.
 */
export const edgeBeliefs = (cuts: readonly EdgeCut[], kind: EdgeKind): EdgeBeliefs => {
  const graded = cuts.map((cut) => ({ ...cut, way: byHeat[kind].indexOf(cut.edge) }));
  const settings = countedBySetting(graded, shareOf.length).slice(-mostSettings);
  const heat = heatFrom(settings);
  const points = heatChanges(isOnePower(settings), spreads).flatMap((change) =>
    widths.map((width): Point => ({ ...change, second: change.at + width })),
  );
  const weight = weighed(points, settings, heat);
  const bestAt = (spot: HeatSpot): Float64Array => {
    const best = new Float64Array(points.length);
    points.forEach((point, i) => {
      const x = heat(spot, point.exponent);
      best[i] = kind === 'wood' ? coldestAt(x, point) : middleAt(x, point);
    });
    return best;
  };
  return {
    shareAt: (spot) => {
      const best = bestAt(spot);
      const mean = best.reduce((sum, share, i) => sum + share * (weight[i] ?? 0), 0);
      return {
        meanOf100: 100 * mean,
        atLeastOf100: 100 * roughWeightedQuantile(best, weight, atLeastAt),
      };
    },
    surelyBetterPct: (one, other) => {
      const [here, there] = [bestAt(one), bestAt(other)];
      return (
        100 * weight.reduce((sum, w, i) => ((here[i] ?? 0) > (there[i] ?? 0) ? sum + w : sum), 0)
      );
    },
  };
};

/** The first change, and where the second follows it. */
interface Point extends HeatChange {
  readonly second: number;
}

/** The share that has not seen the first change at so much heat, that has seen the second, and that lies between. */
const coldestAt = (heat: number, { at, spread }: Point): number => logistic((at - heat) / spread);
const hottestAt = (heat: number, { second, spread }: Point): number =>
  logistic((heat - second) / spread);
const middleAt = (heat: number, point: Point): number =>
  Math.max(0, 1 - coldestAt(heat, point) - hottestAt(heat, point));
const shareOf = [coldestAt, middleAt, hottestAt] as const;

const weighed = (
  points: readonly Point[],
  settings: readonly (HeatSpot & { readonly counts: readonly number[] })[],
  heat: (spot: HeatSpot, exponent: number) => number,
): Float64Array => {
  const weight = new Float64Array(points.length);
  points.forEach((point, i) => {
    let log = Math.log(point.prior);
    for (const setting of settings) {
      const x = heat(setting, point.exponent);
      shareOf.forEach((share, grade) => {
        const count = setting.counts[grade] ?? NaN;
        if (count > 0) log += count * Math.log(asRead(misread, share(x, point)));
      });
    }
    weight[i] = log;
  });
  return weightsOf(weight);
};
