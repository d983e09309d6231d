import { logGamma } from './distributions.ts';

/** Logarithm of the number of ways to choose `k` of `n`. */
export const logChoose = (n: number, k: number): number =>
  logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1);
