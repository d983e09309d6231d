/**
 * Quasi-random points in the open unit cube: point i has coordinate j = frac(½ + (i + 1)·√pⱼ), pⱼ the j-th prime
 * (Richtmyer's sequence). Any dimension, any length, no state; neighbouring points fill the cube evenly.
 * Source: Richtmyer (1951), LA-1342; Niederreiter (1992), SIAM, §5.
 */
export interface Kronecker {
  readonly dimensions: number;
  /** Coordinate `dimension` of point `index`, strictly between 0 and 1. */
  readonly at: (index: number, dimension: number) => number;
}

const primes: readonly number[] = (() => {
  const found: number[] = [];
  for (let candidate = 2; found.length < 400; candidate += 1) {
    if (found.every((prime) => candidate % prime !== 0)) found.push(candidate);
  }
  return found;
})();

/** Most dimensions that {@link kronecker} serves. */
export const mostKroneckerDimensions = primes.length;

export const kronecker = (dimensions: number): Kronecker => {
  const steps = Float64Array.from(primes.slice(0, dimensions), (prime) => Math.sqrt(prime) % 1);
  return {
    dimensions,
    at: (index, dimension) => {
      const value = (0.5 + (index + 1) * (steps[dimension] ?? NaN)) % 1;
      return Math.min(1 - 1e-12, Math.max(1e-12, value));
    },
  };
};
