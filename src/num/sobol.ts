/** Sobol points stand on multiples of 2⁻³⁰. */
export const sobolBits = 30;
const bits = sobolBits;

/**
 * Joe & Kuo 2008, set “new-joe-kuo-6”, dimensions 2 to 16: degree and coefficients of a primitive polynomial, and the
 * first direction integers. The first dimension needs none.
 */
const polynomials: readonly {
  readonly coefficients: number;
  readonly initial: readonly number[];
}[] = [
  { coefficients: 0, initial: [1] },
  { coefficients: 1, initial: [1, 3] },
  { coefficients: 1, initial: [1, 3, 1] },
  { coefficients: 2, initial: [1, 1, 1] },
  { coefficients: 1, initial: [1, 1, 3, 3] },
  { coefficients: 4, initial: [1, 3, 5, 13] },
  { coefficients: 2, initial: [1, 1, 5, 5, 17] },
  { coefficients: 4, initial: [1, 1, 5, 5, 5] },
  { coefficients: 7, initial: [1, 1, 7, 11, 19] },
  { coefficients: 11, initial: [1, 1, 5, 1, 1] },
  { coefficients: 13, initial: [1, 1, 1, 3, 11] },
  { coefficients: 14, initial: [1, 3, 5, 5, 31] },
  { coefficients: 1, initial: [1, 3, 3, 9, 7, 49] },
  { coefficients: 13, initial: [1, 1, 1, 15, 21, 21] },
  { coefficients: 16, initial: [1, 3, 1, 13, 27, 49] },
];

export const mostSobolDimensions = polynomials.length + 1;

/**
 * The first `count` points of the unscrambled Sobol sequence in [0, 1)^dimensions, in the order of Antonov & Saleev
 * (each point differs from the one before by one direction number), the origin first.
 *
 * @param skip leaves out that many points at the beginning.
 * @throws RangeError above {@link mostSobolDimensions} dimensions or 2³⁰ points.
 */
export const sobol = (
  count: number,
  dimensions: number,
  { skip = 0 } = {},
): readonly (readonly number[])[] => {
  if (!(dimensions >= 1 && dimensions <= mostSobolDimensions) || skip + count > 2 ** bits) {
    throw new RangeError(
      `sobol: 1 to ${mostSobolDimensions} dimensions and 2^${bits} points at most`,
    );
  }
  const directions = Array.from({ length: dimensions }, (_, d) => directionNumbers(d));
  const state = directions.map(() => 0);
  const points: (readonly number[])[] = [];
  for (let index = 0; index < skip + count; index += 1) {
    if (index >= skip) points.push(state.map((integer) => integer / 2 ** bits));
    // The bit that the Gray code of the next index changes: the lowest zero bit of this one.
    const changed = 31 - Math.clz32(~index & (index + 1));
    for (const [d, direction] of directions.entries()) {
      state[d] = (state[d] ?? NaN) ^ (direction[changed] ?? NaN);
    }
  }
  return points;
};

/** Coordinate `dimension` (from 0) of point `index` of the same sequence, as a whole number of 2⁻³⁰. O(log index). */
export const sobolInteger = (index: number, dimension: number): number => {
  const direction = directions[dimension];
  if (direction === undefined) throw new RangeError(`sobol: no dimension ${String(dimension)}`);
  let integer = 0;
  for (let gray = index ^ (index >>> 1), bit = 0; gray !== 0; gray >>>= 1, bit += 1) {
    if ((gray & 1) === 1) integer ^= direction[bit] ?? NaN;
  }
  return integer;
};

const directionNumbers = (dimension: number): readonly number[] => {
  const polynomial = polynomials[dimension - 1];
  if (polynomial === undefined) return Array.from({ length: bits }, (_, i) => 2 ** (bits - 1 - i));
  const { coefficients, initial } = polynomial;
  const degree = initial.length;
  const numbers = initial.map((integer, i) => integer * 2 ** (bits - 1 - i));
  for (let i = degree; i < bits; i += 1) {
    const oldest = numbers[i - degree] ?? NaN;
    let next = oldest ^ (oldest >>> degree);
    for (let k = 1; k < degree; k += 1) {
      if (((coefficients >>> (degree - 1 - k)) & 1) === 1) next ^= numbers[i - k] ?? NaN;
    }
    numbers.push(next);
  }
  return numbers;
};

const directions = Array.from({ length: mostSobolDimensions }, (_, d) =>
  Int32Array.from(directionNumbers(d)),
);
