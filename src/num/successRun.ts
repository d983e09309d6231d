import { betaCdf } from './distributions.ts';

/** So that a size that meets its wish exactly, as 2 does for ½ and ¾, is not lost to rounding. */
const slack = 1 + 1e-12;

/**
 * The smallest number of trials that shows a reliability with a confidence when `failures` of them fail: the smallest n
 * for which so few failures would be rarer than 1 − confidence, were the reliability just missed. Well known: 59 for
 * 95/95 and 299 for 99 at 95 with none failed. O(log n).
 *
 * @param reliability 0 < reliability < 1. @param confidence 0 < confidence < 1.
 */
export const successRunSize = ({
  reliability,
  confidence,
  failures = 0,
}: {
  readonly reliability: number;
  readonly confidence: number;
  readonly failures?: number;
}): number => {
  // P(at most `failures` fail of n), which falls as n grows: binomial sums are incomplete beta functions.
  const isEnough = (n: number): boolean =>
    n > failures && betaCdf(reliability, n - failures, failures + 1) <= (1 - confidence) * slack;
  let [tooFew, enough] = [failures, failures + 1];
  while (!isEnough(enough)) [tooFew, enough] = [enough, 2 * enough];
  while (enough - tooFew > 1) {
    const middle = Math.floor((tooFew + enough) / 2);
    if (isEnough(middle)) enough = middle;
    else tooFew = middle;
  }
  return enough;
};
