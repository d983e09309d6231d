import { cusumChart } from '../../num/cusum.ts';
import { ewmaChart } from '../../num/ewma.ts';
import { normalQuantile } from '../../num/normal.ts';
import { foreseenLevel } from './foreseenLevel.ts';
import {
  chanceAtLower,
  countChances,
  expected,
  learned,
  levelBelief,
  type CountChances,
  type LevelBelief,
} from './levelGrid.ts';
import { alarmLimits } from './alarmLimits.ts';
import type { Foreseen, Watched } from './watched.ts';

/** One order or strip on the chart. */
export interface WatchPoint {
  readonly id: string;
  readonly at: string;
  readonly kind: Watched['kind'];
  readonly batch?: string;
  readonly parts: number;
  readonly notOut: number;
  readonly spoilt: number;
  /** How many not-out were foreseen on average, by the promise and the orders before this one. */
  readonly foreseenNotOut: number;
  /** How it came out against that, as a standard normal score: below 0 is worse. */
  readonly score: number;
  /** Exponentially weighted average of the scores up to here. */
  readonly average: number;
  /** Cumulated shortfall up to here (CUSUM of the low side), 0 or more. */
  readonly shortfall: number;
  readonly alarm: boolean;
}

export interface WatchChart {
  readonly points: readonly WatchPoint[];
  /** `alarm`: the last point is beyond a limit. `recovered`: an earlier one was, the last is not. */
  readonly standing: 'nothing-yet' | 'as-foreseen' | 'alarm' | 'recovered';
  /** While it stands at alarm: since which point it has been going down, and how much speed that is like. */
  readonly slipping?: {
    readonly sincePoint: number;
    /** As if it cut slower by so much, per cent, if the scatter is the usual 8 %; with its 10 % and 90 %. */
    readonly speedLossPct: number;
    readonly lowPct: number;
    readonly highPct: number;
  };
}

/** Scores beyond this tell no more: one wretched order is alarm enough. */
const farthestScore = 6;

/**
 * The chart over orders and strips, oldest first. Each is scored against what the promise **and all before it** foresaw:
 * the chance of fewer out plus half the chance of just so many, as a normal quantile. What the promise foresaw is so
 * corrected by what came out: where the belief is right the scores are independent and nearly standard normal whatever
 * the sizes of the orders (Dawid 1984, J. R. Stat. Soc. A 147:278; the half is the mid-p of Lancaster 1961), which is what
 * the limits need. An exponentially weighted average (λ = ¼) and a cumulated sum (slack ½) watch for the low side, and one count alone may be bad enough. O(points
 * × 165 × 161), ~0.3 ms a point.
 */
export const watchChart = (foreseen: Foreseen, watched: readonly Watched[]): WatchChart => {
  if (watched.length === 0) return { points: [], standing: 'nothing-yet' };
  const counts = watched.map((one) => countChances(one, foreseen.promise.partLengthMm));
  const beliefs: LevelBelief[] = [levelBelief(foreseenLevel(foreseen))];
  const scores = counts.map((chances) => {
    const before = beliefs.at(-1) ?? levelBelief(foreseenLevel(foreseen));
    beliefs.push(learned(before, chances));
    return scoreOf(before, chances);
  });
  const { lambda, width, slack, limit, outright } = alarmLimits;
  const { averages, exactHalfWidths } = ewmaChart(scores, { lambda, width, target: 0, sigma: 1 });
  const { low } = cusumChart(scores, { target: 0, slack, limit });
  const points = watched.map((one, i): WatchPoint => {
    const chances = counts[i];
    const belief = beliefs[i];
    const average = averages[i + 1] ?? NaN;
    const shortfall = low[i] ?? NaN;
    const parts = one.groups.reduce((sum, group) => sum + group.parts, 0);
    return {
      id: one.id,
      at: one.at,
      kind: one.kind,
      ...(one.batch === undefined ? {} : { batch: one.batch }),
      parts,
      notOut: parts - one.groups.reduce((sum, group) => sum + group.out, 0),
      spoilt: one.spoilt,
      foreseenNotOut:
        chances === undefined || belief === undefined ? 0 : expected(belief, chances.mean),
      score: scores[i] ?? NaN,
      average,
      shortfall,
      alarm:
        shortfall > limit ||
        average < -(exactHalfWidths[i] ?? Infinity) ||
        (scores[i] ?? NaN) < -outright,
    };
  });
  const now = points.at(-1)?.alarm === true;
  const standing = now ? 'alarm' : points.some(({ alarm }) => alarm) ? 'recovered' : 'as-foreseen';
  return now
    ? { points, standing, slipping: slipping(points, beliefs, counts) }
    : { points, standing };
};

const scoreOf = (belief: LevelBelief, { same, more }: CountChances): number => {
  const worse = expected(belief, more) + 0.5 * expected(belief, same);
  const score = normalQuantile(Math.min(1 - 1e-12, Math.max(1e-12, worse)));
  return Math.max(-farthestScore, Math.min(farthestScore, score));
};

/** What a per cent of speed is worth in units of the scatter: the cut model's usual σ, sheets included. */
const usualScatter = 0.085;
const lossesPct = Array.from({ length: 46 }, (_, i) => i);

/**
 * The sum was last at rest before `sincePoint` (Page's estimate of when it began). How much: the loss in per cent of
 * speed, every one from 0 to 45 thought equally likely, by what was known then and what came out since.
 */
const slipping = (
  points: readonly WatchPoint[],
  beliefs: readonly LevelBelief[],
  counts: readonly CountChances[],
): NonNullable<WatchChart['slipping']> => {
  const atRest = points.findLastIndex(({ shortfall }) => shortfall === 0);
  const sincePoint = Math.min(atRest + 1, points.length - 1);
  const belief = beliefs[sincePoint];
  const since = counts.slice(sincePoint);
  const likely = lossesPct.map((pct) =>
    belief === undefined ? 0 : chanceAtLower(belief, since, -Math.log1p(-pct / 100) / usualScatter),
  );
  const all = likely.reduce((sum, chance) => sum + chance, 0);
  const quantile = (p: number): number => {
    let below = 0;
    return lossesPct.find((_, i) => (below += likely[i] ?? NaN) >= p * all) ?? 0;
  };
  return {
    sincePoint,
    speedLossPct: quantile(0.5),
    lowPct: quantile(0.1),
    highPct: quantile(0.9),
  };
};
