import { dot, invertPositive, times, weightedCross, weightedSum } from './symmetricMatrix.ts';

export interface NonNegativeFit {
  /** One weight for each row, none negative. */
  readonly weights: readonly number[];
  /** target − Σ weightᵢ·rowᵢ: at the optimum no row leans along it. */
  readonly residual: readonly number[];
}

/**
 * The mix of rows, with no negative weight, that comes nearest to a target: least squares by the active-set rule of
 * Lawson & Hanson (1974, chapter 23). The residual is then a proof: its dot product with every row is ≤ 0, and 0 with
 * the rows in use. Rows are few coordinates long; each round solves for the rows in use, at most that many.
 */
export const nonNegativeMix = (
  rows: readonly (readonly number[])[],
  target: readonly number[],
): NonNegativeFit => {
  let weights = rows.map(() => 0);
  const inUse = new Set<number>();
  // Rows that rounding cannot tell from a mix of those in use.
  const tooAlike = new Set<number>();
  const residualOf = (): readonly number[] => {
    const mixed = weightedSum(rows, weights);
    return target.map((value, i) => value - (mixed[i] ?? NaN));
  };
  const scale =
    Math.sqrt(dot(target, target)) * Math.max(...rows.map((row) => Math.sqrt(dot(row, row))));
  for (let round = 0; round < 3 * rows.length + 30; round += 1) {
    const residual = residualOf();
    const lean = rows.map((row, i) =>
      inUse.has(i) || tooAlike.has(i) ? -Infinity : dot(row, residual),
    );
    const steepest = lean.indexOf(Math.max(...lean));
    if (!((lean[steepest] ?? -Infinity) > 1e-12 * scale)) break;
    inUse.add(steepest);
    const solved = solveInUse(rows, target, [...inUse]);
    if (solved === null) {
      inUse.delete(steepest);
      tooAlike.add(steepest);
      continue;
    }
    weights = stayNonNegative({ rows, target, inUse, weights, solved });
  }
  return { weights, residual: residualOf() };
};

/** Unconstrained least squares with some of the rows. */
const solveInUse = (
  rows: readonly (readonly number[])[],
  target: readonly number[],
  used: readonly number[],
): ReadonlyMap<number, number> | null => {
  const chosen = used.map((i) => rows[i] ?? []);
  const coordinates = target.map((_, k) => chosen.map((row) => row[k] ?? NaN));
  const normal = invertPositive(
    weightedCross(
      coordinates,
      target.map(() => 1),
    ),
  );
  if (normal === null) return null;
  const first = times(normal.inverse, weightedSum(coordinates, target));
  // Once more on what is left: the normal equations square the rows’ closeness, and this wins the digits back.
  const left = target.map((value, k) => value - dot(coordinates[k] ?? [], first));
  const correction = times(normal.inverse, weightedSum(coordinates, left));
  const solution = first.map((value, k) => value + (correction[k] ?? NaN));
  return new Map(used.map((i, k) => [i, solution[k] ?? NaN]));
};

/** Walks from the weights to the solution, dropping rows whose weight would turn negative, until none does. */
const stayNonNegative = (given: {
  readonly rows: readonly (readonly number[])[];
  readonly target: readonly number[];
  readonly inUse: Set<number>;
  readonly weights: readonly number[];
  readonly solved: ReadonlyMap<number, number>;
}): number[] => {
  const { rows, target, inUse } = given;
  let { solved } = given;
  let weights = [...given.weights];
  while ([...solved.values()].some((value) => value <= 0)) {
    const part = Math.min(
      ...[...solved]
        .filter(([, value]) => value <= 0)
        .map(([i, value]) => (weights[i] ?? NaN) / ((weights[i] ?? NaN) - value)),
    );
    weights = weights.map((weight, i) => weight + part * ((solved.get(i) ?? weight) - weight));
    for (const i of [...inUse]) {
      if ((solved.get(i) ?? 0) <= 0 && (weights[i] ?? NaN) <= 1e-14) {
        inUse.delete(i);
        weights[i] = 0;
      }
    }
    const again = solveInUse(rows, target, [...inUse]);
    if (again === null || inUse.size === 0) return weights;
    solved = again;
  }
  return weights.map((_, i) => solved.get(i) ?? 0);
};
