import { chiSquareUpperTail } from '../../src/num/distributions.ts';

export const levels = [50, 80, 95] as const;

/** How one parameter's truths lie in their posteriors. */
export interface Coverage {
  /** Per cent of truths inside the central interval of each of {@link levels}. */
  readonly insidePct: readonly number[];
  /** Truths by twentieths of posterior probability. */
  readonly counts: readonly number[];
  /** Of the counts against an even spread, Pearson's chi-square with 19 degrees of freedom. */
  readonly pValue: number;
}

export const bins = 20;

/**
 * Simulation-based calibration: if truths come from the prior and data from the model, the posterior probability below the
 * truth is uniform. Cook, Gelman & Rubin (2006), J. Comput. Graph. Stat. 15:675; Talts et al. (2018), arXiv:1804.06788.
 */
export const coverageOf = (below: readonly number[]): Coverage => {
  const counts = Array.from({ length: bins }, () => 0);
  for (const p of below) {
    const bin = Math.min(bins - 1, Math.floor(bins * p));
    counts[bin] = (counts[bin] ?? 0) + 1;
  }
  const expected = below.length / bins;
  const chiSquare = counts.reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0);
  return {
    insidePct: levels.map((level) => {
      const tail = (1 - level / 100) / 2;
      return (100 * below.filter((p) => p >= tail && p < 1 - tail).length) / below.length;
    }),
    counts,
    pValue: chiSquareUpperTail(chiSquare, bins - 1),
  };
};
