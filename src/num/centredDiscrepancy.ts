/**
 * How far a set of points in the unit cube is from even: the square of Hickernell's (1998) centred L2 discrepancy.
 * O(n²·dimensions).
 */
export const centredDiscrepancy = (points: readonly (readonly number[])[]): number => {
  const n = points.length;
  const dimensions = points[0]?.length ?? 0;
  const offset = (x: number | undefined): number => Math.abs((x ?? NaN) - 0.5);
  const single = points.reduce(
    (sum, point) =>
      sum + point.reduce((product, x) => product * (1 + offset(x) / 2 - offset(x) ** 2 / 2), 1),
    0,
  );
  const pairs = points.reduce(
    (sum, a) =>
      sum +
      points.reduce(
        (inner, b) =>
          inner +
          a.reduce(
            (product, x, k) =>
              product * (1 + offset(x) / 2 + offset(b[k]) / 2 - Math.abs(x - (b[k] ?? NaN)) / 2),
            1,
          ),
        0,
      ),
    0,
  );
  return (13 / 12) ** dimensions - (2 / n) * single + pairs / (n * n);
};
