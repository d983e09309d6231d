import type { Interval } from './binomialInterval.ts';
import { bracketedRoot } from './bracketedRoot.ts';
import { logChoose } from './logChoose.ts';

/** Counts in a table of two rows: a, b in the first, c, d in the second. */
export interface TwoByTwo {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
}

export interface FisherTest {
  /** Sum of the probabilities of all tables with these margins that are no likelier than the one seen. */
  readonly twoSided: number;
  /** P(first count ≤ a) and P(first count ≥ a). */
  readonly less: number;
  readonly greater: number;
}

export interface ConditionalOddsRatio {
  /** Maximises the probability of the table given its margins; 0 or Infinity at an end. */
  readonly estimate: number;
  /** Exact: each end as rare as half of what is left of the confidence. */
  readonly limits: Interval;
}

/** Tables whose probabilities differ by less than this part count as equally likely. */
const tie = 1 + 1e-7;

/** Fisher's exact test of a two-by-two table. */
export const fisherTest = (table: TwoByTwo): FisherTest => {
  const first = firstCount(table);
  const chances = first.chances(0);
  const seen = chances[table.a - first.least] ?? NaN;
  const sum = (keep: (count: number, chance: number) => boolean): number =>
    Math.min(
      1,
      chances.reduce((total, p, i) => (keep(first.least + i, p) ? total + p : total), 0),
    );
  return {
    twoSided: sum((_, p) => p <= seen * tie),
    less: sum((count) => count <= table.a),
    greater: sum((count) => count >= table.a),
  };
};

/** The odds ratio ad/bc of the counts themselves: 0, Infinity, or NaN where neither row or column says anything. */
export const sampleOddsRatio = ({ a, b, c, d }: TwoByTwo): number => (a * d) / (b * c);

/** The odds ratio given the margins, from the noncentral hypergeometric distribution of the first count. */
export const conditionalOddsRatio = (
  table: TwoByTwo,
  confidence = 0.95,
): ConditionalOddsRatio | null => {
  const first = firstCount(table);
  if (first.least === first.most) return null;
  const tail = (1 - confidence) / 2;
  const meanAt = (lnRatio: number): number =>
    first.chances(lnRatio).reduce((sum, p, i) => sum + p * (first.least + i), 0);
  const tailAt = (lnRatio: number, keep: (count: number) => boolean): number =>
    first.chances(lnRatio).reduce((sum, p, i) => (keep(first.least + i) ? sum + p : sum), 0);
  const [isLeast, isMost] = [table.a === first.least, table.a === first.most];
  const inside = ratioWhere((lnRatio) => meanAt(lnRatio) - table.a);
  return {
    estimate: isLeast ? 0 : isMost ? Infinity : inside,
    limits: [
      isLeast ? 0 : ratioWhere((lnRatio) => tailAt(lnRatio, (count) => count >= table.a) - tail),
      isMost
        ? Infinity
        : ratioWhere((lnRatio) => tail - tailAt(lnRatio, (count) => count <= table.a)),
    ],
  };
};

/** e^x at the root of a function that rises. */
const ratioWhere = (rising: (lnRatio: number) => number): number => {
  const found = bracketedRoot(rising, { low: -700, high: 700, relative: 1e-15 });
  return found === null ? NaN : Math.exp(found.x);
};

/** Which first counts the margins allow, and how likely each is at a given logarithm of the odds ratio. */
const firstCount = ({
  a,
  b,
  c,
  d,
}: TwoByTwo): {
  readonly least: number;
  readonly most: number;
  readonly chances: (lnRatio: number) => readonly number[];
} => {
  const least = Math.max(0, a - d);
  const most = Math.min(a + b, a + c);
  const counts = Array.from({ length: most - least + 1 }, (_, i) => least + i);
  const logWays = counts.map((count) => logChoose(a + b, count) + logChoose(c + d, a + c - count));
  const chances = (lnRatio: number): readonly number[] => {
    const logs = counts.map((count, i) => (logWays[i] ?? NaN) + count * lnRatio);
    const top = Math.max(...logs);
    const weights = logs.map((log) => Math.exp(log - top));
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    return weights.map((weight) => weight / total);
  };
  return { least, most, chances };
};
