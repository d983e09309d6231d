import { betaCdf } from '../../num/distributions.ts';
import { logChoose } from '../../num/logChoose.ts';
import { logNormalCdf } from '../../num/normal.ts';
import { referenceLengthsIn } from '../reading/referenceLengths.ts';
import type { ForeseenLevel } from './foreseenLevel.ts';
import type { Watched, WatchedGroup } from './watched.ts';

/**
 * What is known of a proven setting's level k and of how far orders scatter about it, ρ: sheet-to-sheet scatter over the
 * scatter of parts. An order cut at level k has its own margin
 *
 *     t = k·√(1 + ρ²) + ρ·Z,   Z ~ N(0, 1),   and Φ(t) of its sound parts come out,
 *
 * so that Φ(k) come out on average over orders: a binomial count with the overdispersion that sheets give.
 */
export interface LevelBelief {
  readonly nodes: readonly LevelNode[];
  /** Of each node; they sum to 1. */
  readonly weights: Float64Array;
}

interface LevelNode {
  readonly level: number;
  /** Chances of the order's margin over the margins below. */
  readonly margin: Float64Array;
}

const marginStep = 0.1;
/** Margins of one order, in units of the scatter. */
const margins: Float64Array = Float64Array.from({ length: 161 }, (_, i) => -6 + i * marginStep);

/** Sheet scatter over scatter, half-normal of scale ½: the cut model's .04 over .08. */
const sheetNodes = [0.1, 0.25, 0.4, 0.6, 0.9];
const sheetScale = 0.5;
const levelNodes = 33;
const levelSpan = 3.6;

export const levelBelief = ({ mean, sd }: ForeseenLevel): LevelBelief => {
  const nodes: LevelNode[] = [];
  const weights: number[] = [];
  for (let i = 0; i < levelNodes; i += 1) {
    const z = levelSpan * ((2 * i) / (levelNodes - 1) - 1);
    for (const sheet of sheetNodes) {
      const level = mean + sd * z;
      nodes.push({ level, margin: marginsOf(level * Math.sqrt(1 + sheet * sheet), sheet) });
      weights.push(Math.exp(-0.5 * z * z - 0.5 * (sheet / sheetScale) ** 2));
    }
  }
  return { nodes, weights: normalised(Float64Array.from(weights)) };
};

const marginsOf = (centre: number, spread: number): Float64Array =>
  normalised(margins.map((t) => Math.exp(-0.5 * ((t - centre) / spread) ** 2) + 1e-300));

const normalised = (values: Float64Array): Float64Array => {
  let sum = 0;
  for (const value of values) sum += value;
  return values.map((value) => value / sum);
};

/** How many did not come out, by the margin of the order: chance of this very count, and of more. */
export interface CountChances {
  readonly same: Float64Array;
  readonly more: Float64Array;
  /** Mean number not out. */
  readonly mean: Float64Array;
}

/** Usual scatters, for strips only: what a speed ratio is worth in units of the scatter. Prior of the cut model. */
const scatters = [
  { sigma: 0.05, weight: 0.25 },
  { sigma: 0.08, weight: 0.5 },
  { sigma: 0.125, weight: 0.25 },
];

/**
 * The chances of a count at each margin. Orders: exactly binomial. Strips: the counts of their settings added up, over
 * the usual scatters. `promiseLengthMm` is the length that the level was given for.
 */
export const countChances = ({ groups }: Watched, promiseLengthMm: number): CountChances => {
  const [only] = groups;
  return only !== undefined && groups.length === 1 && only.lnFaster === 0
    ? ofOneSetting(only, promiseLengthMm)
    : ofSettings(groups, promiseLengthMm);
};

/** ln of the share that comes out: a longer part has more chances to fail. */
const lnShare = (margin: number, lengthMm: number, promiseLengthMm: number): number =>
  (logNormalCdf(margin) * referenceLengthsIn(lengthMm)) / referenceLengthsIn(promiseLengthMm);

const ofOneSetting = (group: WatchedGroup, promiseLengthMm: number): CountChances => {
  const { parts, out, lengthMm } = group;
  const failed = parts - out;
  const choose = logChoose(parts, failed);
  const lnOut = margins.map((t) => lnShare(t, lengthMm, promiseLengthMm));
  const failing = lnOut.map((ln) => -Math.expm1(ln));
  return {
    same: lnOut.map((ln, i) =>
      Math.exp(choose + out * ln + (failed === 0 ? 0 : failed * Math.log(failing[i] ?? NaN))),
    ),
    // P(X ≥ f + 1): the regularised incomplete beta function.
    more: failing.map((q) => (out === 0 ? 0 : betaCdf(q, failed + 1, out))),
    mean: failing.map((q) => parts * q),
  };
};

const ofSettings = (groups: readonly WatchedGroup[], promiseLengthMm: number): CountChances => {
  const failed = groups.reduce((sum, { parts, out }) => sum + parts - out, 0);
  const blank = (): Float64Array => new Float64Array(margins.length);
  const [same, more, mean] = [blank(), blank(), blank()];
  margins.forEach((t, i) => {
    for (const { sigma, weight } of scatters) {
      let counts = [1];
      for (const { parts, lnFaster, lengthMm } of groups) {
        const q = -Math.expm1(lnShare(t - lnFaster / sigma, lengthMm, promiseLengthMm));
        mean[i] = (mean[i] ?? NaN) + weight * parts * q;
        for (let part = 0; part < parts; part += 1) counts = withOneMore(counts, q);
      }
      same[i] = (same[i] ?? NaN) + weight * (counts[failed] ?? NaN);
      const above = counts.slice(failed + 1).reduce((sum, chance) => sum + chance, 0);
      more[i] = (more[i] ?? NaN) + weight * above;
    }
  });
  return { same, more, mean };
};

const withOneMore = (counts: readonly number[], q: number): number[] =>
  Array.from(
    { length: counts.length + 1 },
    (_, k) => (counts[k] ?? 0) * (1 - q) + (k === 0 ? 0 : (counts[k - 1] ?? NaN) * q),
  );

/** What is expected of something that is known by margin, node by node. O(nodes × margins), ~25 µs. */
const byNode = ({ nodes }: LevelBelief, values: Float64Array): Float64Array =>
  Float64Array.from(nodes, ({ margin }) => {
    let sum = 0;
    for (let i = 0; i < margin.length; i += 1) sum += (margin[i] ?? NaN) * (values[i] ?? NaN);
    return sum;
  });

/** The same over all nodes. */
export const expected = (belief: LevelBelief, values: Float64Array): number =>
  byNode(belief, values).reduce((sum, value, i) => sum + value * (belief.weights[i] ?? NaN), 0);

/** What is known once a count was seen. */
export const learned = (belief: LevelBelief, chances: CountChances): LevelBelief => {
  const likely = byNode(belief, chances.same);
  return {
    ...belief,
    weights: normalised(belief.weights.map((weight, i) => weight * (likely[i] ?? NaN) + 1e-300)),
  };
};

/** Chance of these counts, one after the other, if the level had fallen by so much; the orders' margins are their own. */
export const chanceAtLower = (
  belief: LevelBelief,
  counts: readonly CountChances[],
  lower: number,
): number => {
  const places = Math.round(lower / marginStep);
  const each = counts.map(({ same }) =>
    byNode(
      belief,
      margins.map((_, i) => same[Math.max(0, i - places)] ?? NaN),
    ),
  );
  return belief.weights.reduce(
    (sum, weight, node) => sum + each.reduce((all, chance) => all * (chance[node] ?? NaN), weight),
    0,
  );
};
