export interface CusumChart {
  /** Cumulated excess above target + slack, and below target − slack, after each observation. */
  readonly high: readonly number[];
  readonly low: readonly number[];
  /** The first observation, counted from 1, at which either exceeds the limit; null where none does. */
  readonly firstSignal: number | null;
}

/**
 * Two one-sided cumulative sums against a target (Page 1954; NIST/SEMATECH e-Handbook 6.3.2.3). Slack and limit in the
 * unit of the observations.
 */
export const cusumChart = (
  x: readonly number[],
  given: { readonly target: number; readonly slack: number; readonly limit: number },
): CusumChart => {
  const { target, slack, limit } = given;
  const cumulate = (sign: 1 | -1): readonly number[] => {
    let sum = 0;
    return x.map((value) => (sum = Math.max(0, sum + sign * (value - target) - slack)));
  };
  const [high, low] = [cumulate(1), cumulate(-1)];
  const found = x.findIndex((_, i) => (high[i] ?? NaN) > limit || (low[i] ?? NaN) > limit);
  return { high, low, firstSignal: found < 0 ? null : found + 1 };
};
