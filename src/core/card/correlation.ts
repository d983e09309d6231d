/** Pearson's correlation of two rows of equal length; 0 where either does not vary. */
export const correlation = (a: readonly number[], b: readonly number[]): number => {
  const n = a.length;
  const meanA = a.reduce((sum, x) => sum + x, 0) / n;
  const meanB = b.reduce((sum, x) => sum + x, 0) / n;
  let [ab, aa, bb] = [0, 0, 0];
  for (const [i, x] of a.entries()) {
    const da = x - meanA;
    const db = (b[i] ?? meanB) - meanB;
    ab += da * db;
    aa += da * da;
    bb += db * db;
  }
  return aa < 1e-12 || bb < 1e-12 ? 0 : ab / Math.sqrt(aa * bb);
};
