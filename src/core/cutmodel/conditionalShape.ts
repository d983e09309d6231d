import { positiveFactor } from '../../num/newtonMode.ts';
import type { Target } from './likelihood.ts';
import type { Layout } from './model.ts';
import { scaleAt, type ScalePrior } from './priorScales.ts';

/** The posterior about its conditional mode at one value of z(ln σ), the scales of scatter held. */
export interface ShapeNode {
  readonly position: number;
  readonly logMarginal: number;
  readonly mode: Float64Array;
  /** Minus the second derivatives, row-major; the rows of held coordinates are those of the unit matrix. */
  readonly curvature: Float64Array;
  /** Width of the line through the mode, in standard deviations of the normal with this curvature. */
  readonly lnWidth: number;
}

/**
 * A normal of the coordinates that are not held, given those that are: z = mode + L⁻ᵀ·steps, L the factor of the curvature.
 * ln v50 stands last, so that its step moves all the others along their regressions on it: that is the line.
 */
export interface ConditionalShape {
  /** Writes mode + L⁻ᵀ·steps into the free coordinates. */
  readonly place: (steps: Float64Array, into: Float64Array) => void;
  /** The steps that lead to a point. */
  readonly stepsTo: (z: Float64Array, into: Float64Array) => void;
  /** What one last step adds to the free coordinates. */
  readonly direction: Float64Array;
  /** How wide the posterior is along the line by its curvature, in last steps. */
  width: number;
  /** ln |dsteps/dz| */
  logJacobian: number;
}

export interface ConditionalShapes {
  readonly free: readonly number[];
  readonly shapes: readonly ConditionalShape[];
  /** To a value of z(ln σ), and to the scales of scatter that stand in `z`. */
  readonly moveTo: (position: number, z: Float64Array) => void;
}

/** The prior's curvature is 1; where the likelihood curves the other way the draws may get twice as wide, no wider. */
export const leastCurvature = 0.25;

/** The coordinates that are not held, ln v50 last. */
export const freeOrder = (layout: Layout, held: readonly number[]): readonly number[] => [
  ...Array.from({ length: layout.size }, (_, i) => i).filter(
    (i) => i !== layout.lnV50 && !held.includes(i),
  ),
  layout.lnV50,
];

/**
 * One shape for each of `powers` to which the likelihood is raised: 1 for the posterior, 0 for the prior.
 *
 * Between the nodes mode and curvature are interpolated. The effects of sheets and batches enter z divided by their
 * scales, so with another scale the likelihood's curvature H − I turns to R(H − I)R, R = diag(scale/held scale), and the
 * mode to the solution of (I + R(H − I)R)·z = R·H·z₀. Without this the joint of scale and effects is a funnel that no
 * normal fits. Costs a Cholesky factor a shape and move.
 */
export const conditionalShapes = (
  nodes: readonly ShapeNode[],
  { layout, priors }: Pick<Target, 'layout' | 'priors'>,
  held: readonly number[],
  heldAt: Float64Array,
  powers: readonly number[],
): ConditionalShapes => {
  const free = freeOrder(layout, held);
  const n = free.length;
  /** Scale of scatter at a point; 1 where the model has none. */
  const scaleOf = (axis: number, prior: ScalePrior | null, z: Float64Array): number =>
    axis < 0 || prior === null ? 1 : scaleAt(prior, z[axis] ?? NaN);
  const heldSheets = scaleOf(layout.sheetSd, priors.sheetSd, heldAt);
  const heldBatches = scaleOf(layout.batchSd, priors.batchSd, heldAt);
  const inOrder = nodes.map((node) => ({
    position: node.position,
    curvature: Float64Array.from(
      free.flatMap((i) =>
        free.map((j) => (node.curvature[i * layout.size + j] ?? NaN) - (i === j ? 1 : 0)),
      ),
    ),
    // H·z₀: interpolated instead of the mode, so that the mode follows the interpolated curvature.
    pull: Float64Array.from(free, (i) =>
      free.reduce(
        (sum, j) => sum + (node.curvature[i * layout.size + j] ?? NaN) * (node.mode[j] ?? NaN),
        0,
      ),
    ),
    lnWidth: node.lnWidth,
  }));
  const isSheet = free.map((i) => layout.sheet >= 0 && i >= layout.sheet);
  const isBatch = free.map(
    (i) => layout.batch >= 0 && i >= layout.batch && (layout.sheet < 0 || i < layout.sheet),
  );
  const stretch = new Float64Array(n);
  const ofLikelihood = new Float64Array(n * n);
  const pull = new Float64Array(n);
  const matrix = new Float64Array(n * n);
  const work = new Float64Array(n);
  const oneStep = new Float64Array(n);
  oneStep[n - 1] = 1;

  const made = powers.map((power) => {
    const mode = new Float64Array(n);
    const direction = new Float64Array(n);
    const factor = new Float64Array(n * n);
    const shape: ConditionalShape = {
      place: (steps, into) => {
        solveTransposedInto(factor, n, steps, work);
        for (let a = 0; a < n; a += 1) into[free[a] ?? NaN] = (mode[a] ?? NaN) + (work[a] ?? NaN);
      },
      stepsTo: (z, into) => {
        for (let a = 0; a < n; a += 1) work[a] = (z[free[a] ?? NaN] ?? NaN) - (mode[a] ?? NaN);
        for (let a = 0; a < n; a += 1) {
          let step = 0;
          for (let b = a; b < n; b += 1) step += (factor[b * n + a] ?? NaN) * (work[b] ?? NaN);
          into[a] = step;
        }
      },
      direction,
      width: 1,
      logJacobian: 0,
    };
    const move = (width: number): void => {
      for (let a = 0; a < n; a += 1) {
        for (let b = 0; b < n; b += 1) matrix[a * n + b] = power * (ofLikelihood[a * n + b] ?? NaN);
        matrix[a * n + a] = 1 + (matrix[a * n + a] ?? NaN);
        work[a] = power * (pull[a] ?? NaN);
      }
      positiveFactor(matrix, n, leastCurvature, factor);
      solveInto(factor, n, work, mode);
      solveTransposedInto(factor, n, oneStep, direction);
      let product = 1;
      let curvature = 0;
      for (let a = 0; a < n; a += 1) {
        product *= factor[a * n + a] ?? NaN;
        let sum = direction[a] ?? NaN;
        for (let b = 0; b < n; b += 1)
          sum += (ofLikelihood[a * n + b] ?? NaN) * (direction[b] ?? NaN);
        curvature += sum * (direction[a] ?? NaN);
      }
      shape.logJacobian = Math.log(product);
      shape.width = width / Math.sqrt(Math.max(leastCurvature, curvature));
    };
    return { shape, move };
  });

  const moveTo = (position: number, z: Float64Array): void => {
    let index = 0;
    while (index < nodes.length - 2 && position > (nodes[index + 1]?.position ?? Infinity)) {
      index += 1;
    }
    const left = inOrder[index];
    const right = inOrder[index + 1];
    if (!left || !right) throw new Error('a proposal has at least two nodes');
    const wanted = (position - left.position) / (right.position - left.position);
    const part = Math.min(1, Math.max(0, wanted));
    const sheets = scaleOf(layout.sheetSd, priors.sheetSd, z) / heldSheets;
    const batches = scaleOf(layout.batchSd, priors.batchSd, z) / heldBatches;
    const width = Math.exp(left.lnWidth + part * (right.lnWidth - left.lnWidth));
    for (let a = 0; a < n; a += 1) {
      stretch[a] = isSheet[a] === true ? sheets : isBatch[a] === true ? batches : 1;
      pull[a] = (stretch[a] ?? NaN) * mix(left.pull, right.pull, a, part);
      for (let b = 0; b <= a; b += 1) {
        const h = mix(left.curvature, right.curvature, a * n + b, part);
        const value = (stretch[a] ?? NaN) * h * (stretch[b] ?? NaN);
        ofLikelihood[a * n + b] = value;
        ofLikelihood[b * n + a] = value;
      }
    }
    for (const { move } of made) move(width);
  };
  return { free, shapes: made.map(({ shape }) => shape), moveTo };
};

const solveInto = (lower: Float64Array, n: number, b: Float64Array, into: Float64Array): void => {
  for (let i = 0; i < n; i += 1) {
    let sum = b[i] ?? NaN;
    for (let k = 0; k < i; k += 1) sum -= (lower[i * n + k] ?? NaN) * (into[k] ?? NaN);
    into[i] = sum / (lower[i * n + i] ?? NaN);
  }
  solveTransposedInto(lower, n, into, into);
};

const solveTransposedInto = (
  lower: Float64Array,
  n: number,
  b: Float64Array,
  into: Float64Array,
): void => {
  for (let i = n - 1; i >= 0; i -= 1) {
    let sum = b[i] ?? NaN;
    for (let k = i + 1; k < n; k += 1) sum -= (lower[k * n + i] ?? NaN) * (into[k] ?? NaN);
    into[i] = sum / (lower[i * n + i] ?? NaN);
  }
};

const mix = (left: Float64Array, right: Float64Array, i: number, part: number): number =>
  (left[i] ?? NaN) + part * ((right[i] ?? NaN) - (left[i] ?? NaN));
