import { kronecker } from './kronecker.ts';
import { mostSobolDimensions, sobolBits, sobolInteger } from './sobol.ts';

/** Evenly spread points in the open unit cube, of any dimension and length. */
export interface QuasiRandomPoints {
  readonly dimensions: number;
  /** Coordinate `dimension` of point `index`, strictly between 0 and 1. */
  readonly at: (index: number, dimension: number) => number;
}

/**
 * The first coordinates, to which the most important ones belong, from Sobol’s sequence with a fixed digital shift (its
 * bits are those of √prime); where there are more than it serves, the others from Richtmyer’s. A hybrid sequence: Spanier
 * (1995), in Monte Carlo and Quasi-Monte Carlo Methods, Springer LNS 106; the shift: Dick & Pillichshammer (2010), Digital
 * Nets and Sequences, §13.
 */
export const quasiRandomPoints = (dimensions: number): QuasiRandomPoints => {
  const richtmyer = kronecker(dimensions);
  const shifts = Array.from({ length: Math.min(dimensions, mostSobolDimensions) }, (_, d) =>
    Math.floor(shiftOf(d) * 2 ** sobolBits),
  );
  return {
    dimensions,
    at: (index, dimension) => {
      const shift = shifts[dimension];
      return shift === undefined
        ? richtmyer.at(index, dimension)
        : ((sobolInteger(index, dimension) ^ shift) + 0.5) / 2 ** sobolBits;
    },
  };
};

/** frac(½ + √prime), the primes of other coordinates than Richtmyer’s sequence gives to these. */
const shiftOf = (dimension: number): number =>
  kronecker(dimension + apart + 1).at(0, dimension + apart);
const apart = 3;
