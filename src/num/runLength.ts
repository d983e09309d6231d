import { LuDecomposition, Matrix } from 'ml-matrix';

import { gaussLegendre } from './gaussLegendre.ts';
import { normalCdf, normalPdf } from './normal.ts';

/** How many observations a chart takes on average until it signals, and how well that is known. */
export interface RunLength {
  readonly mean: number;
  /** Relative change when the number of nodes was doubled last. */
  readonly change: number;
}

/**
 * Average run length of a one-sided cumulative sum from zero, for normal observations with unit sd whose mean lies
 * `shift` above the target: L(u) = 1 + L(0)·Φ(k − u − shift) + ∫₀ʰ L(x)·φ(x + k − u − shift) dx (Page 1954), by
 * Gauss–Legendre nodes.
 */
export const cusumRunLength = (given: {
  readonly slack: number;
  readonly limit: number;
  readonly shift: number;
}): RunLength => {
  const { slack, limit, shift } = given;
  return settle((n) => {
    const { x, weights } = gaussLegendre(n, 0, limit);
    const starts = [0, ...x];
    const kernel = starts.map((u) => [
      normalCdf(slack - u - shift),
      ...x.map((to, j) => (weights[j] ?? NaN) * normalPdf(to + slack - u - shift)),
    ]);
    return meansFrom(kernel)[0] ?? NaN;
  });
};

/**
 * The same with both sides watched. Their rates of signalling add (Kemp 1961, from memory): when one sum signals, the
 * other stands at zero.
 */
export const twoSidedCusumRunLength = (given: {
  readonly slack: number;
  readonly limit: number;
  readonly shift: number;
}): RunLength => {
  const above = cusumRunLength(given);
  const below = cusumRunLength({ ...given, shift: -given.shift });
  return {
    mean: 1 / (1 / above.mean + 1 / below.mean),
    change: Math.max(above.change, below.change),
  };
};

/**
 * Average run length of an exponentially weighted moving average from the target, with its asymptotic limits at
 * `width` standard deviations of the average: L(u) = 1 + ∫ L(x)·φ((x − (1 − λ)u)/λ − shift) dx/λ (Crowder 1987).
 */
export const ewmaRunLength = (given: {
  readonly lambda: number;
  readonly width: number;
  readonly shift: number;
}): RunLength => {
  const { lambda, width, shift } = given;
  const limit = width * Math.sqrt(lambda / (2 - lambda));
  return settle((n) => {
    const { x, weights } = gaussLegendre(n, -limit, limit);
    const chances = (u: number): readonly number[] =>
      x.map(
        (to, j) =>
          ((weights[j] ?? NaN) * normalPdf((to - (1 - lambda) * u) / lambda - shift)) / lambda,
      );
    const means = meansFrom(x.map(chances));
    return 1 + chances(0).reduce((sum, chance, j) => sum + chance * (means[j] ?? NaN), 0);
  });
};

/** Doubles the nodes until the answer stands still. */
const settle = (withNodes: (n: number) => number): RunLength => {
  let mean = withNodes(16);
  let change = Infinity;
  for (let n = 32; n <= 256 && change > 1e-11; n *= 2) {
    const finer = withNodes(n);
    change = Math.abs(finer / mean - 1);
    mean = finer;
  }
  return { mean, change };
};

/** The mean numbers of steps until an absorbing chain leaves: (I − Q)·L = 1. */
const meansFrom = (kernel: readonly (readonly number[])[]): readonly number[] => {
  const left = new Matrix(kernel.map((row, i) => row.map((value, j) => (i === j ? 1 : 0) - value)));
  return new LuDecomposition(left).solve(Matrix.ones(kernel.length, 1)).getColumn(0);
};
