import { Matrix, SingularValueDecomposition } from 'ml-matrix';

import { leastSquares, type Residuals } from './leastSquares.ts';

export type Point = readonly [x: number, y: number];

/** One place on the flat thing and where it appears in the picture. */
export interface PointPair {
  readonly source: Point;
  readonly target: Point;
}

/** Row-major, 3×3, the last element 1: target ~ H·[x y 1]ᵀ. */
export type Homography = readonly [
  readonly [number, number, number],
  readonly [number, number, number],
  readonly [number, number, number],
];

export type HomographyOutcome =
  | {
      readonly ok: true;
      readonly matrix: Homography;
      /** Root of the mean squared distance between the targets and the mapped sources. */
      readonly rms: number;
      /** The picture shows the thing from behind, or mirrored. */
      readonly mirrored: boolean;
    }
  | { readonly ok: false; readonly reason: 'too-few' | 'degenerate' };

/**
 * The plane-to-plane map through four pairs or, for more, nearest to them in the algebraic sense: the direct linear
 * transformation with both sides normalised (Hartley 1997). Refused where the pairs do not fix one map: fewer than
 * four, coinciding, or too many on a line.
 */
export const homographyThrough = (pairs: readonly PointPair[]): HomographyOutcome => {
  if (pairs.length < 4) return { ok: false, reason: 'too-few' };
  const source = normaliser(pairs.map((pair) => pair.source));
  const target = normaliser(pairs.map((pair) => pair.target));
  if (source === null || target === null) return { ok: false, reason: 'degenerate' };
  const rows = pairs.flatMap((pair) =>
    equations(apply(source, pair.source), apply(target, pair.target)),
  );
  const solution = nullVector(rows);
  if (solution === null) return { ok: false, reason: 'degenerate' };
  const inner = new Matrix([solution.slice(0, 3), solution.slice(3, 6), solution.slice(6, 9)]);
  // With the solution of unit length a sound map's determinant is far from 0; a collapsed one's is rounding.
  if (!(Math.abs(determinant(inner)) > 1e-7)) return { ok: false, reason: 'degenerate' };
  return outcomeOf(inverseOf(target).mmul(inner).mmul(matrixOf(source)), pairs);
};

/**
 * The map that comes nearest to the targets in the picture’s own distance: the transformation above, improved by least
 * squares over its eight free elements. For exactly four pairs they are one and the same.
 */
export const homographyNearest = (pairs: readonly PointPair[]): HomographyOutcome => {
  const first = homographyThrough(pairs);
  if (!first.ok) return first;
  const source = normaliser(pairs.map((pair) => pair.source));
  const target = normaliser(pairs.map((pair) => pair.target));
  if (source === null || target === null) return { ok: false, reason: 'degenerate' };
  const inner = matrixOf(target)
    .mmul(new Matrix(first.matrix.map((row) => [...row])))
    .mmul(inverseOf(source));
  const start = inner.to1DArray().map((value) => value / inner.get(2, 2));
  const normalised = pairs.map((pair) => ({
    source: apply(source, pair.source),
    target: apply(target, pair.target),
  }));
  const fit = leastSquares((elements) => distances(normalised, elements), start.slice(0, 8));
  if (!fit.ok) return { ok: false, reason: 'degenerate' };
  const best = new Matrix([
    fit.parameters.slice(0, 3),
    fit.parameters.slice(3, 6),
    [...fit.parameters.slice(6, 8), 1],
  ]);
  return outcomeOf(inverseOf(target).mmul(best).mmul(matrixOf(source)), pairs);
};

/** Where a map sends a point. Infinite for points on its horizon. */
export const project = (matrix: Homography, [x, y]: Point): Point => {
  const [[a, b, c], [d, e, f], [g, h, i]] = matrix;
  const w = g * x + h * y + i;
  return [(a * x + b * y + c) / w, (d * x + e * y + f) / w];
};

/** Shifts and scales: x′ = scale·(x − centre). */
interface Normaliser {
  readonly centre: Point;
  readonly scale: number;
}

/** To a centroid at 0 and a mean distance of √2 from it. */
const normaliser = (points: readonly Point[]): Normaliser | null => {
  const mean = (k: 0 | 1): number =>
    points.reduce((sum, point) => sum + point[k] / points.length, 0);
  const centre: Point = [mean(0), mean(1)];
  const distance =
    points.reduce((sum, [x, y]) => sum + Math.hypot(x - centre[0], y - centre[1]), 0) /
    points.length;
  return distance > 0 ? { centre, scale: Math.SQRT2 / distance } : null;
};

const apply = ({ centre, scale }: Normaliser, [x, y]: Point): Point => [
  scale * (x - centre[0]),
  scale * (y - centre[1]),
];

const matrixOf = ({ centre: [x, y], scale }: Normaliser): Matrix =>
  new Matrix([
    [scale, 0, -scale * x],
    [0, scale, -scale * y],
    [0, 0, 1],
  ]);

const inverseOf = ({ centre: [x, y], scale }: Normaliser): Matrix =>
  new Matrix([
    [1 / scale, 0, x],
    [0, 1 / scale, y],
    [0, 0, 1],
  ]);

/** Two equations in the nine elements: the target is parallel to the mapped source. */
const equations = ([x, y]: Point, [u, v]: Point): readonly (readonly number[])[] => [
  [0, 0, 0, -x, -y, -1, v * x, v * y, v],
  [x, y, 1, 0, 0, 0, -u * x, -u * y, -u],
];

/** The unit vector that the rows make smallest; null where more than one direction does. */
const nullVector = (rows: readonly (readonly number[])[]): readonly number[] | null => {
  // The decomposition wants at least as many rows as columns.
  const padded =
    rows.length < 9 ? [...rows, ...Array.from({ length: 9 - rows.length }, () => zeros)] : rows;
  const parts = new SingularValueDecomposition(new Matrix(padded.map((row) => [...row])), {
    computeLeftSingularVectors: false,
  });
  const [largest = NaN] = parts.diagonal;
  const secondSmallest = parts.diagonal[7] ?? NaN;
  return secondSmallest > 1e-7 * largest ? parts.rightSingularVectors.getColumn(8) : null;
};

const zeros: readonly number[] = [0, 0, 0, 0, 0, 0, 0, 0, 0];

const determinant = (m: Matrix): number =>
  m.get(0, 0) * (m.get(1, 1) * m.get(2, 2) - m.get(1, 2) * m.get(2, 1)) -
  m.get(0, 1) * (m.get(1, 0) * m.get(2, 2) - m.get(1, 2) * m.get(2, 0)) +
  m.get(0, 2) * (m.get(1, 0) * m.get(2, 1) - m.get(1, 1) * m.get(2, 0));

const outcomeOf = (matrix: Matrix, pairs: readonly PointPair[]): HomographyOutcome => {
  const last = matrix.get(2, 2);
  if (!(Math.abs(last) > 1e-12 * matrix.norm())) return { ok: false, reason: 'degenerate' };
  const scaled = matrix.div(last);
  const row = (i: number): readonly [number, number, number] => [
    scaled.get(i, 0),
    scaled.get(i, 1),
    scaled.get(i, 2),
  ];
  const homography: Homography = [row(0), row(1), row(2)];
  const squares = pairs.reduce((sum, { source, target }) => {
    const [x, y] = project(homography, source);
    return sum + (x - target[0]) ** 2 + (y - target[1]) ** 2;
  }, 0);
  const rms = Math.sqrt(squares / pairs.length);
  return { ok: true, matrix: homography, rms, mirrored: determinant(scaled) < 0 };
};

const distances = (
  pairs: readonly PointPair[],
  [a = NaN, b = NaN, c = NaN, d = NaN, e = NaN, f = NaN, g = NaN, h = NaN]: readonly number[],
): Residuals => {
  const lines = pairs.flatMap(({ source: [x, y], target: [u, v] }) => {
    const w = g * x + h * y + 1;
    const [px, py] = [(a * x + b * y + c) / w, (d * x + e * y + f) / w];
    return [
      { value: px - u, slopes: [x / w, y / w, 1 / w, 0, 0, 0, (-px * x) / w, (-px * y) / w] },
      { value: py - v, slopes: [0, 0, 0, x / w, y / w, 1 / w, (-py * x) / w, (-py * y) / w] },
    ];
  });
  return { values: lines.map((line) => line.value), slopes: lines.map((line) => line.slopes) };
};
