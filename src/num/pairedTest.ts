import { logChoose } from './logChoose.ts';

export interface PairedTest {
  /** min(1, 2·P(X ≤ the smaller)), X binomial with ½. */
  readonly twoSided: number;
  /** P(X ≤ b): small where b is rarer than c. */
  readonly oneSided: number;
  /** The two-sided value less half the chance of what was seen, on each side. */
  readonly midP: number;
  /** (b − c)²/(b + c), and with Edwards' correction. */
  readonly chiSquare: number;
  readonly chiSquareCorrected: number;
}

/**
 * McNemar's test of pairs of which `b` went one way and `c` the other (pairs that agree say nothing): exact. Null
 * without such a pair.
 */
export const pairedTest = (b: number, c: number): PairedTest | null => {
  const n = b + c;
  if (n === 0) return null;
  const chance = (k: number): number => Math.exp(logChoose(n, k) - n * Math.LN2);
  const atMost = (k: number): number => {
    let sum = 0;
    for (let i = 0; i <= k; i += 1) sum += chance(i);
    return Math.min(1, sum);
  };
  const twoSided = Math.min(1, 2 * atMost(Math.min(b, c)));
  return {
    twoSided,
    oneSided: atMost(b),
    midP: twoSided - chance(b),
    chiSquare: (b - c) ** 2 / n,
    chiSquareCorrected: Math.max(0, Math.abs(b - c) - 1) ** 2 / n,
  };
};
