/**
 * The first `count` points of the unscrambled Halton sequence, one base (coprime, each at least 2) a dimension, the
 * origin first: the digits of the index, mirrored at the point.
 */
export const halton = (
  count: number,
  bases: readonly number[],
  { skip = 0 } = {},
): readonly (readonly number[])[] =>
  Array.from({ length: count }, (_, i) => bases.map((base) => radicalInverse(skip + i, base)));

/** The digits of a whole number in a base, mirrored at the point: 6 = 110₂ becomes 0.011₂. */
const radicalInverse = (index: number, base: number): number => {
  let [mirrored, places] = [0, 1];
  for (let rest = index; rest > 0; rest = Math.floor(rest / base)) {
    mirrored = mirrored * base + (rest % base);
    places *= base;
  }
  return mirrored / places;
};
