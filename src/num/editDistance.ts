/**
 * How many letters must be put in, taken out, changed or swapped with their neighbour to make one word of the other,
 * no stretch being edited twice. O(|a|·|b|). (F. J. Damerau 1964, Communications of the ACM 7:171, in the form called
 * optimal string alignment.)
 */
export const editDistance = (a: string, b: string): number => {
  const from = Array.from(a);
  const to = Array.from(b);
  let twoAbove: readonly number[] = [];
  let above: readonly number[] = Array.from({ length: to.length + 1 }, (_, column) => column);
  from.forEach((letter, row) => {
    const line = [row + 1];
    to.forEach((other, column) => {
      const put = (line[column] ?? NaN) + 1;
      const taken = (above[column + 1] ?? NaN) + 1;
      const changed = (above[column] ?? NaN) + (letter === other ? 0 : 1);
      const swapped =
        letter === to[column - 1] && other === from[row - 1]
          ? (twoAbove[column - 1] ?? NaN) + 1
          : Infinity;
      line.push(Math.min(put, taken, changed, swapped));
    });
    twoAbove = above;
    above = line;
  });
  return above[to.length] ?? NaN;
};
