import { positiveFactor } from '../../num/newton.ts';
import type { Layout, ModelPriors } from './model.ts';
import { scaleAt, type ScalePrior } from './priorScales.ts';

/** The posterior about its conditional mode at one value of z(ln σ), the scales of scatter held. */
export interface ShapeNode {
  readonly position: number;
  readonly logMarginal: number;
  readonly mode: Float64Array;
  /** Minus the second derivatives, row-major; the rows of held coordinates are those of the unit matrix. */
  readonly curvature: Float64Array;
  /** Two-piece scales by direction: below and above. */
  readonly below: Float64Array;
  readonly above: Float64Array;
}

/** The two-piece normal of all coordinates that are not held, given those that are; moved from draw to draw. */
export interface ConditionalShape {
  readonly below: Float64Array;
  readonly above: Float64Array;
  /** To a value of z(ln σ), and to the scales of scatter that stand in `z`. */
  readonly moveTo: (position: number, z: Float64Array) => void;
  /** mode + root·steps */
  readonly place: (steps: Float64Array, into: Float64Array) => void;
  /** The steps that lead to a point: for {@link logDensity}. */
  readonly stepsTo: (at: Float64Array, steps: Float64Array) => void;
  /** Log density of the draw with these steps, the whole shape being `scale` times as wide. */
  readonly logDensity: (steps: Float64Array, scale: number) => number;
}

/** The prior's curvature is 1; where the likelihood curves the other way the draws may get twice as wide, no wider. */
const leastCurvature = 0.25;

const logTwoOverRootTwoPi = Math.log(2 / Math.sqrt(2 * Math.PI));

/**
 * Between the nodes mode and curvature are interpolated. The effects of sheets and batches enter z divided by their
 * scales, so with another scale the likelihood's curvature H − I turns to R(H − I)R, R = diag(scale/held scale), and the
 * mode to the solution of (I + R(H − I)R)·z = R·H·z₀. Without this the joint of scale and effects is a funnel that no
 * normal fits. Costs a Cholesky factor a draw.
 */
export const conditionalShape = (
  nodes: readonly ShapeNode[],
  layout: Layout,
  priors: Pick<ModelPriors, 'sheetSd' | 'batchSd'>,
  held: readonly number[],
  heldAt: Float64Array,
): ConditionalShape => {
  const free = Array.from({ length: layout.size }, (_, i) => i).filter((i) => !held.includes(i));
  const n = free.length;
  /** Scale of scatter at a point; 1 where the model has none. */
  const scaleOf = (axis: number, prior: ScalePrior | null, z: Float64Array): number =>
    axis < 0 || prior === null ? 1 : scaleAt(prior, z[axis] ?? 0);
  const heldSheets = scaleOf(layout.sheetSd, priors.sheetSd, heldAt);
  const heldBatches = scaleOf(layout.batchSd, priors.batchSd, heldAt);
  const mode = new Float64Array(n);
  const matrix = new Float64Array(n * n);
  const stretch = new Float64Array(n);
  const below = new Float64Array(layout.size).fill(1);
  const above = new Float64Array(layout.size).fill(1);
  const work = new Float64Array(n);
  const away = new Float64Array(n);
  let factor: Float64Array = new Float64Array(n * n);
  let logScale = 0;
  const isSheet = (i: number): boolean => layout.sheet >= 0 && i >= layout.sheet;
  const isBatch = (i: number): boolean =>
    layout.batch >= 0 && i >= layout.batch && (layout.sheet < 0 || i < layout.sheet);

  const moveTo = (position: number, z: Float64Array): void => {
    const { left, right, part } = between(nodes, position);
    const sheets = scaleOf(layout.sheetSd, priors.sheetSd, z) / heldSheets;
    const batches = scaleOf(layout.batchSd, priors.batchSd, z) / heldBatches;
    free.forEach((i, a) => {
      stretch[a] = isSheet(i) ? sheets : isBatch(i) ? batches : 1;
      below[i] = mix(left.below, right.below, i, part);
      above[i] = mix(left.above, right.above, i, part);
    });
    for (let a = 0; a < n; a += 1) {
      const row = (free[a] ?? 0) * layout.size;
      let pull = 0;
      for (let b = 0; b < n; b += 1) {
        const j = free[b] ?? 0;
        const h = mix(left.curvature, right.curvature, row + j, part);
        pull += h * mix(left.mode, right.mode, j, part);
        const unit = a === b ? 1 : 0;
        matrix[a * n + b] = unit + (stretch[a] ?? 1) * (h - unit) * (stretch[b] ?? 1);
      }
      work[a] = (stretch[a] ?? 1) * pull;
    }
    factor = positiveFactor(matrix, n, leastCurvature);
    solveInto(factor, n, work, mode);
    logScale = 0;
    for (let a = 0; a < n; a += 1) {
      const i = free[a] ?? 0;
      logScale +=
        logTwoOverRootTwoPi -
        Math.log((below[i] ?? 1) + (above[i] ?? 1)) +
        Math.log(factor[a * n + a] ?? 1);
    }
  };

  /** z = mode + L⁻ᵀ·steps. */
  const place = (steps: Float64Array, into: Float64Array): void => {
    for (let a = n - 1; a >= 0; a -= 1) {
      let sum = steps[free[a] ?? 0] ?? 0;
      for (let b = a + 1; b < n; b += 1) sum -= (factor[b * n + a] ?? 0) * (work[b] ?? 0);
      work[a] = sum / (factor[a * n + a] ?? 1);
    }
    free.forEach((i, a) => (into[i] = (mode[a] ?? 0) + (work[a] ?? 0)));
  };

  /** steps = Lᵀ·(z − mode). */
  const stepsTo = (at: Float64Array, steps: Float64Array): void => {
    for (let a = 0; a < n; a += 1) away[a] = (at[free[a] ?? 0] ?? 0) - (mode[a] ?? 0);
    for (let a = 0; a < n; a += 1) {
      let step = 0;
      for (let b = a; b < n; b += 1) step += (factor[b * n + a] ?? 0) * (away[b] ?? 0);
      steps[free[a] ?? 0] = step;
    }
  };

  const logDensity = (steps: Float64Array, scale: number): number => {
    let squares = 0;
    for (let a = 0; a < n; a += 1) {
      const i = free[a] ?? 0;
      const step = steps[i] ?? 0;
      const standard = step / ((step < 0 ? below[i] : above[i]) ?? 1);
      squares += standard * standard;
    }
    return logScale - n * Math.log(scale) - (0.5 * squares) / (scale * scale);
  };

  return { below, above, moveTo, place, stepsTo, logDensity };
};

const solveInto = (lower: Float64Array, n: number, b: Float64Array, into: Float64Array): void => {
  for (let i = 0; i < n; i += 1) {
    let sum = b[i] ?? 0;
    for (let k = 0; k < i; k += 1) sum -= (lower[i * n + k] ?? 0) * (into[k] ?? 0);
    into[i] = sum / (lower[i * n + i] ?? 1);
  }
  for (let i = n - 1; i >= 0; i -= 1) {
    let sum = into[i] ?? 0;
    for (let k = i + 1; k < n; k += 1) sum -= (lower[k * n + i] ?? 0) * (into[k] ?? 0);
    into[i] = sum / (lower[i * n + i] ?? 1);
  }
};

const mix = (left: Float64Array, right: Float64Array, i: number, part: number): number =>
  (left[i] ?? 0) + part * ((right[i] ?? 0) - (left[i] ?? 0));

const between = (
  nodes: readonly ShapeNode[],
  position: number,
): { readonly left: ShapeNode; readonly right: ShapeNode; readonly part: number } => {
  let index = 0;
  while (index < nodes.length - 2 && position > (nodes[index + 1]?.position ?? Infinity)) {
    index += 1;
  }
  const left = nodes[index];
  const right = nodes[index + 1];
  if (!left || !right) throw new Error('a proposal has at least two nodes');
  const part = (position - left.position) / (right.position - left.position);
  return { left, right, part: Math.min(1, Math.max(0, part)) };
};
