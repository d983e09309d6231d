import { normalQuantile } from '../../num/normal.ts';
import { roughWeightedQuantile } from '../../num/weightedQuantile.ts';
import type { EdgeGrade, EdgeKind } from '../reading/edge.ts';
import { asRead } from './reading.ts';

export interface EdgeSpot {
  readonly powerPct: number;
  readonly speedMmPerS: number;
}

/** Where an edge was cut, and how it came out. */
export interface EdgeCut extends EdgeSpot {
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
  readonly shareAt: (spot: EdgeSpot) => EdgeShare;
  /** How sure it is that more edges are of the best grade at one setting than at another, 0–100. */
  readonly surelyBetterPct: (one: EdgeSpot, other: EdgeSpot) => number;
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

// Priors, by judgement: no source. In ln of heat, so 0.1 is a tenth more heat.
/** How far above and below the middle of what was graded the first change may lie. */
const furthest = 1.2;
const thresholds = Array.from({ length: 49 }, (_, i) => furthest * (i / 24 - 1));
const lognormal = (n: number, median: number, sd: number): readonly number[] =>
  Array.from({ length: n }, (_, i) => median * Math.exp(sd * normalQuantile((i + 0.5) / n)));
/** Heat from the first change to the second. */
const widths = lognormal(9, 0.3, 1);
/** Over how much heat a change is spread. */
const spreads = lognormal(6, 0.1, 0.8);
/** Power's share in heat, N(1, 0.3²), as Gauss and Hermite have it in three points; where it never varied it says nothing. */
const exponents = [
  { value: 1 - 0.3 * Math.sqrt(3), weight: 1 / 6 },
  { value: 1, weight: 2 / 3 },
  { value: 1 + 0.3 * Math.sqrt(3), weight: 1 / 6 },
];

const logistic = (x: number): number => 1 / (1 + Math.exp(-x));

/**
 * What graded edges let expect at other settings: an ordinal model in the heat that a cut leaves in the edge,
 * ln heat = c·ln power − ln speed. Each material's three grades follow each other as heat rises (wood: clean, brown, black;
 * acrylic: frosted, clear, flamed), the changes spread as a logistic. The posterior stands on a fixed grid: no chance in it.
 * Give at least one cut. O(settings), some ms.
 */
export const edgeBeliefs = (cuts: readonly EdgeCut[], kind: EdgeKind): EdgeBeliefs => {
  const settings = bySetting(cuts, kind).slice(-mostSettings);
  const [first] = settings;
  const isOnePower = settings.every(({ powerPct }) => powerPct === first?.powerPct);
  const lnPowerFrom = meanOf(settings, ({ powerPct }) => Math.log(powerPct));
  const lnSpeedFrom = meanOf(settings, ({ speedMmPerS }) => Math.log(speedMmPerS));
  const heat = ({ powerPct, speedMmPerS }: EdgeSpot, exponent: number): number =>
    exponent * (Math.log(powerPct) - lnPowerFrom) - (Math.log(speedMmPerS) - lnSpeedFrom);
  const points = pointsOf(isOnePower);
  const weight = weighed(points, settings, heat);
  const bestAt = (spot: EdgeSpot): Float64Array => {
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

interface Point {
  readonly first: number;
  readonly second: number;
  readonly spread: number;
  readonly exponent: number;
  readonly prior: number;
}

const pointsOf = (isOnePower: boolean): readonly Point[] =>
  (isOnePower ? [{ value: 1, weight: 1 }] : exponents).flatMap(
    ({ value: exponent, weight: prior }) =>
      spreads.flatMap((spread) =>
        widths.flatMap((width) =>
          thresholds.map((first) => ({ first, second: first + width, spread, exponent, prior })),
        ),
      ),
  );

/** The share that has not seen the first change at so much heat, that has seen the second, and that lies between. */
const coldestAt = (heat: number, { first, spread }: Point): number =>
  logistic((first - heat) / spread);
const hottestAt = (heat: number, { second, spread }: Point): number =>
  logistic((heat - second) / spread);
const middleAt = (heat: number, point: Point): number =>
  Math.max(0, 1 - coldestAt(heat, point) - hottestAt(heat, point));
const shareOf = [coldestAt, middleAt, hottestAt] as const;

const weighed = (
  points: readonly Point[],
  settings: readonly SettingSeen[],
  heat: (spot: EdgeSpot, exponent: number) => number,
): Float64Array => {
  const weight = new Float64Array(points.length);
  points.forEach((point, i) => {
    let log = Math.log(point.prior);
    for (const setting of settings) {
      const x = heat(setting, point.exponent);
      shareOf.forEach((share, grade) => {
        const count = setting.counts[grade] ?? 0;
        if (count > 0) log += count * Math.log(asRead(misread, share(x, point)));
      });
    }
    weight[i] = log;
  });
  const most = weight.reduce((a, b) => Math.max(a, b), -Infinity);
  const likely = weight.map((log) => Math.exp(log - most));
  const total = likely.reduce((a, b) => a + b, 0);
  return likely.map((w) => w / total);
};

interface SettingSeen extends EdgeSpot {
  /** By grade, in the order of heat. */
  readonly counts: number[];
}

const bySetting = (cuts: readonly EdgeCut[], kind: EdgeKind): readonly SettingSeen[] => {
  const settings = new Map<string, SettingSeen>();
  for (const { powerPct, speedMmPerS, edge, count } of cuts) {
    const key = `${String(powerPct)}/${String(speedMmPerS)}`;
    const setting = settings.get(key) ?? { powerPct, speedMmPerS, counts: [0, 0, 0] };
    const grade = byHeat[kind].indexOf(edge);
    setting.counts[grade] = (setting.counts[grade] ?? 0) + count;
    settings.set(key, setting);
  }
  return [...settings.values()];
};

const meanOf = <T>(items: readonly T[], of: (item: T) => number): number =>
  items.reduce((sum, item) => sum + of(item), 0) / items.length;
