import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { mersenne } from 'pure-rand/generator/mersenne';

import { normalQuantile } from './normal.ts';

/** A source of pseudo-random numbers that gives the same numbers for the same seed, on every engine. */
export interface SeededRandom {
  /** Uniform on the open interval (0, 1), 53 bits. */
  readonly uniform: () => number;
  /** Standard normal, by inversion: one uniform each. */
  readonly normal: () => number;
  /** A whole number 0 … n − 1, each equally likely. `n` at least 1. */
  readonly integer: (n: number) => number;
  /** A shuffled copy (Fisher and Yates). */
  readonly shuffle: <T>(items: readonly T[]) => T[];
}

/** The Mersenne twister from a whole-number seed (its lowest 32 bits count). */
export const seededRandom = (seed: number): SeededRandom => {
  const generator = mersenne(seed);
  const uniform = (): number => {
    let value = uniformFloat64(generator);
    while (value === 0) value = uniformFloat64(generator);
    return value;
  };
  const integer = (n: number): number => uniformInt(generator, 0, n - 1);
  const shuffle = <T>(items: readonly T[]): T[] => {
    const rest = [...items];
    const shuffled: T[] = [];
    while (rest.length > 0) shuffled.push(...rest.splice(integer(rest.length), 1));
    return shuffled;
  };
  return { uniform, normal: () => normalQuantile(uniform()), integer, shuffle };
};
