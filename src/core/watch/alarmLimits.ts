/**
 * Limits of the two charts on standard normal scores: each alone would call once in some 273 orders without cause, a single
 * count once in some 2000, all together once in 200 (test: by the run lengths of `num/runLength.ts`, and by playing both together). How it comes out on
 * counts of orders stands in the bench, `npm run -s bench -- watch`.
 */
export const alarmLimits = {
  /** Weight of the newest score in the average. */
  lambda: 0.25,
  /** Limit of the average in its standard deviations. */
  width: 2.54,
  /** Shortfall that is forgiven at each order, in standard deviations: half of the change that is looked for. */
  slack: 0.5,
  /** Limit of the cumulated shortfall. */
  limit: 3.8,
  /** One count alone that is farther down than this is alarm enough: one in 2000 without cause. */
  outright: 3.3,
  /** What is stated: one alarm without cause in so many orders. */
  ordersPerFalseAlarm: 200,
} as const;
