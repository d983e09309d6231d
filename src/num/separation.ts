import { nonNegativeMix } from './nonNegativeLeastSquares.ts';
import { dot } from './symmetricMatrix.ts';

/** Trials at given covariates: `successes` of `trials` came out. The first covariate is usually the constant 1. */
export interface BinaryRow {
  readonly x: readonly number[];
  readonly trials: number;
  readonly successes: number;
}

/**
 * Why a binary regression has no finite maximum-likelihood estimate, or that it has one. `complete`: some line parts
 * all successes from all failures; `quasi-complete`: some line has none on the wrong side, but some on itself;
 * `all-the-same`: there is nothing to part.
 */
export type Separation = 'none' | 'quasi-complete' | 'complete' | 'all-the-same';

/**
 * Whether the data are separated (Albert & Anderson 1984), decided without fitting. Let each success be the row x and
 * each failure −x. By Stiemke's theorem either these rows cancel in some mix that uses every one of them, and the
 * estimate is finite; or some direction leans along none of them negatively and along one positively. By Gordan's,
 * the direction leans along all of them unless some of them cancel in a mix. Both mixes are sought by non-negative
 * least squares.
 */
export const separationOf = (data: readonly BinaryRow[]): Separation => {
  const rows = unitRows(data);
  const successes = data.some((row) => row.successes > 0);
  const failures = data.some((row) => row.successes < row.trials);
  if (!successes || !failures) return 'all-the-same';
  const all = rows.reduce((sum, row) => row.map((value, i) => value + (sum[i] ?? NaN)));
  const everyRow = nonNegativeMix(
    rows,
    all.map((value) => -value),
  );
  if (isNothing(everyRow.residual, rows.length)) return 'none';
  // Nearest point of the rows' convex hull to the origin: a further coordinate holds the sum of the weights at 1.
  const hull = nonNegativeMix(
    rows.map((row) => [...row, 1]),
    [...all.map(() => 0), 1],
  );
  return isNothing(hull.residual, 1) ? 'quasi-complete' : 'complete';
};

/** Each distinct outcome as one signed row, its covariates scaled alike. */
const unitRows = (data: readonly BinaryRow[]): readonly (readonly number[])[] => {
  const width = data[0]?.x.length ?? 0;
  const centres = columnCentres(data, width);
  const scales = centres.map((centre, k) => {
    const reach = Math.max(...data.map(({ x }) => Math.abs((x[k] ?? NaN) - centre)));
    return reach > 0 ? reach : 1;
  });
  return data.flatMap(({ x, trials, successes }) => {
    const unit = x.map((value, k) => (value - (centres[k] ?? NaN)) / (scales[k] ?? NaN));
    return [
      ...(successes > 0 ? [unit] : []),
      ...(successes < trials ? [unit.map((value) => -value)] : []),
    ];
  });
};

/** Where there is a constant column the others may be centred on their means without changing what can be parted. */
const columnCentres = (data: readonly BinaryRow[], width: number): readonly number[] => {
  const columns = Array.from({ length: width }, (_, k) => data.map(({ x }) => x[k] ?? NaN));
  const isConstant = (column: readonly number[]): boolean =>
    column.every((value) => value === column[0] && value !== 0);
  if (!columns.some(isConstant)) return columns.map(() => 0);
  return columns.map((column) =>
    isConstant(column) ? 0 : column.reduce((sum, value) => sum + value, 0) / column.length,
  );
};

const isNothing = (residual: readonly number[], size: number): boolean =>
  Math.sqrt(dot(residual, residual)) <= 1e-9 * size;

/**
 * Between which two places along one covariate all successes end and all failures begin, lower first; equal where they
 * touch; null where they overlap or there is nothing to part.
 */
export const separationGap = (
  outcomes: readonly { readonly x: number; readonly success: boolean }[],
): readonly [number, number] | null => {
  const places = (success: boolean): readonly number[] =>
    outcomes.filter((outcome) => outcome.success === success).map(({ x }) => x);
  const [yes, no] = [places(true), places(false)];
  if (yes.length === 0 || no.length === 0) return null;
  if (Math.max(...yes) <= Math.min(...no)) return [Math.max(...yes), Math.min(...no)];
  if (Math.max(...no) <= Math.min(...yes)) return [Math.max(...no), Math.min(...yes)];
  return null;
};
