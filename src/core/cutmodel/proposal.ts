import { solveLower } from '../../num/cholesky.ts';
import { newtonClimb, type Summit } from '../../num/newton.ts';
import { normalQuantile } from '../../num/normal.ts';
import { conditionalShape, type ShapeNode } from './conditionalShape.ts';
import type { Target } from './likelihood.ts';
import { marginalFrom } from './scatterMarginal.ts';

/**
 * A density from which points are drawn in place of the posterior, close to it and never thinner in the tails.
 * First ln σ, from its marginal by Laplace's approximation at a few values; then the scales of sheet and batch scatter,
 * half from their priors and half about the mode; then all the rest, given these, from a two-piece normal about the
 * conditional mode. Rue, Martino & Chopin (2009), JRSS B 71:319 (the nodes); Geweke (1989), Econometrica 57:1317 (the
 * two-piece scales).
 */
export interface Proposal {
  /** Turns a point of the unit cube of one dimension more than z into a draw, and returns the log density there (normalised). */
  readonly draw: (cube: (dimension: number) => number, into: Float64Array) => number;
}

/** Where the marginal's nodes stand about the mode, in its own standard deviations. */
const nodeOffsets = [-3, -2, -1, 0, 1, 2, 3, 4];
const middle = nodeOffsets.indexOf(0);

/**
 * A share of the draws does not follow the conditional density below the mode's own ln σ: there the posterior breaks up
 * into several hills (each doubtful cell either a slip or not), which lie where the mode's own spread reaches.
 */
const steadyShare = 0.3;
const steadyScale = 1.3;

/**
 * Where the scales of sheet and batch scatter are held while the nodes are found: at their prior medians, or at the mode
 * where that is wider. Held too narrow, effects that lie far apart would be reached by no draw.
 */
const leastHeldScale = 0;
const mostHeldScale = 3;

export const proposalFor = (target: Target): Proposal => {
  const { size, lnSigma } = target.layout;
  const summit = highestSummit(target);
  const scales = scaleMarginals(target, summit);
  const held = [lnSigma, ...scales.map(({ axis }) => axis)];
  const marginalSd = Math.min(1.2, Math.max(0.15, marginalSdOf(summit, lnSigma, size)));
  const nodes: ShapeNode[] = [];
  const build = (index: number, start: Float64Array): Float64Array => {
    const position = (summit.point[lnSigma] ?? 0) + (nodeOffsets[index] ?? 0) * marginalSd;
    const from = Float64Array.from(start);
    from[lnSigma] = position;
    const conditional = newtonClimb(target.climb, from, { held, mostIterations: 12 });
    nodes[index] = nodeAt(target, conditional, held, position);
    return conditional.point;
  };
  const start = Float64Array.from(summit.point);
  for (const { axis } of scales) {
    start[axis] = Math.min(mostHeldScale, Math.max(leastHeldScale, summit.point[axis] ?? 0));
  }
  let from = build(middle, start);
  for (let index = middle - 1; index >= 0; index -= 1) from = build(index, from);
  from = nodes[middle]?.mode ?? start;
  for (let index = middle + 1; index < nodeOffsets.length; index += 1) from = build(index, from);
  return { draw: drawFrom(target, nodes, scales, held, start) };
};

/** Starts of ln v50 and ln σ, in prior standard deviations: the hills of a surprising card lie far from the prior. */
const levelStarts = [-3, -2.25, -1.5, -1, -0.5, 0, 0.5, 1, 1.5, 2.25, 3];
const scatterStarts = [-0.5, 1.5];

/** Climbs from the best start for each scatter, and keeps the higher summit. */
const highestSummit = (target: Target): Summit => {
  const { size, lnV50, lnSigma } = target.layout;
  const summits = scatterStarts.map((scatter) => {
    let best = new Float64Array(size);
    let bestValue = -Infinity;
    for (const level of levelStarts) {
      const start = new Float64Array(size);
      start[lnV50] = level;
      start[lnSigma] = scatter;
      const value = target.value(start);
      if (value > bestValue) {
        best = start;
        bestValue = value;
      }
    }
    return newtonClimb(target.climb, best);
  });
  return summits.reduce((highest, summit) => (summit.value > highest.value ? summit : highest));
};

const marginalSdOf = (summit: Summit, axis: number, size: number): number => {
  const unit = new Float64Array(size);
  unit[axis] = 1;
  // The axis' variance is the squared length of L⁻¹e.
  return Math.hypot(...solveLower(summit.factor, size, unit));
};

/** How one scale of scatter is drawn. */
interface ScaleMarginal {
  readonly axis: number;
  readonly mean: number;
  readonly sd: number;
}

const scaleMarginals = (target: Target, summit: Summit): readonly ScaleMarginal[] => {
  const { size, sheetSd, batchSd } = target.layout;
  return [sheetSd, batchSd]
    .filter((axis) => axis >= 0)
    .map((axis) => ({
      axis,
      mean: Math.min(2.5, Math.max(-2, summit.point[axis] ?? 0)),
      sd: 1.3 * Math.min(1, Math.max(0.3, marginalSdOf(summit, axis, size))),
    }));
};

const halfLog = Math.log(0.5);
const logRootTwoPi = 0.5 * Math.log(2 * Math.PI);

const normalLog = (x: number, mean: number, sd: number): number =>
  -0.5 * ((x - mean) / sd) ** 2 - Math.log(sd) - logRootTwoPi;

const logSum = (a: number, b: number): number =>
  Math.max(a, b) + Math.log1p(Math.exp(-Math.abs(a - b)));

/** How far along a direction, in local standard deviations, the drop of the log density is looked at. */
const lookAhead = 1.6;
/** How much wider than the local scale the draws are made. */
const widening = 1.08;
const leastScale = 0.6;
const mostScale = 3;

const nodeAt = (
  target: Target,
  summit: Summit,
  held: readonly number[],
  position: number,
): ShapeNode => {
  const size = summit.point.length;
  const below = new Float64Array(size).fill(1);
  const above = new Float64Array(size).fill(1);
  const there = new Float64Array(size);
  let logMarginal = summit.value;
  for (let direction = 0; direction < size; direction += 1) {
    logMarginal -= Math.log(summit.factor[direction * size + direction] ?? 1);
    if (held.includes(direction)) continue;
    // A column of L⁻ᵀ: covariance = L⁻ᵀL⁻¹.
    const along = columnOfInverseTransposed(summit.factor, size, direction);
    const scaleAlong = (sign: 1 | -1): number => {
      for (let i = 0; i < size; i += 1) {
        there[i] = (summit.point[i] ?? 0) + sign * lookAhead * (along[i] ?? 0);
      }
      const drop = summit.value - target.value(there);
      if (!(drop > 0)) return mostScale;
      return Math.min(mostScale, Math.max(leastScale, lookAhead / Math.sqrt(2 * drop)));
    };
    const low = scaleAlong(-1);
    const high = scaleAlong(1);
    below[direction] = low * widening;
    above[direction] = high * widening;
    logMarginal += Math.log(0.5 * (low + high));
  }
  return { position, logMarginal, mode: summit.point, curvature: summit.curvature, below, above };
};

/** Solves Lᵀx = e. */
const columnOfInverseTransposed = (
  lower: Float64Array,
  n: number,
  column: number,
): Float64Array => {
  const x = new Float64Array(n);
  for (let i = column; i >= 0; i -= 1) {
    let sum = i === column ? 1 : 0;
    for (let k = i + 1; k <= column; k += 1) sum -= (lower[k * n + i] ?? 0) * (x[k] ?? 0);
    x[i] = sum / (lower[i * n + i] ?? 1);
  }
  return x;
};

const drawFrom = (
  target: Target,
  nodes: readonly ShapeNode[],
  scales: readonly ScaleMarginal[],
  held: readonly number[],
  heldAt: Float64Array,
): Proposal['draw'] => {
  const { layout, priors } = target;
  const { size, lnSigma } = layout;
  const marginal = marginalFrom(nodes);
  const summitPosition = nodes[middle]?.position ?? 0;
  const local = conditionalShape(nodes, layout, priors, held, heldAt);
  const steady = conditionalShape(nodes, layout, priors, held, heldAt);
  const steps = new Float64Array(size);
  const otherSteps = new Float64Array(size);
  return (cube, into) => {
    const { position, logDensity } = marginal(cube(lnSigma));
    let log = logDensity;
    into[lnSigma] = position;
    for (const { axis, mean, sd } of scales) {
      const u = cube(axis);
      const z = u < 0.5 ? normalQuantile(2 * u) : mean + sd * normalQuantile(2 * u - 1);
      into[axis] = z;
      log += halfLog + logSum(normalLog(z, 0, 1), normalLog(z, mean, sd));
    }
    local.moveTo(position, into);
    // From the mode's own ln σ upwards the steady shape is the local one, only wider.
    const apart = position < summitPosition;
    if (apart) steady.moveTo(summitPosition, into);
    const wide = apart ? steady : local;
    const fromWide = cube(size) < steadyShare;
    const [drawn, other] = fromWide ? [wide, local] : [local, wide];
    const scale = fromWide ? steadyScale : 1;
    for (let j = 0; j < size; j += 1) {
      if (held.includes(j)) continue;
      const low = scale * (drawn.below[j] ?? 1);
      const high = scale * (drawn.above[j] ?? 1);
      const share = low / (low + high);
      const u = cube(j);
      // Two-piece normal: mass in proportion to the scales, so that the density is one curve.
      steps[j] =
        u < share
          ? low * normalQuantile((0.5 * u) / share)
          : high * normalQuantile(0.5 + (0.5 * (u - share)) / (1 - share));
    }
    drawn.place(steps, into);
    if (apart) other.stepsTo(into, otherSteps);
    const localSteps = apart && fromWide ? otherSteps : steps;
    const wideSteps = apart && !fromWide ? otherSteps : steps;
    return (
      log +
      logSum(
        logLocalShare + local.logDensity(localSteps, 1),
        logSteadyShare + wide.logDensity(wideSteps, steadyScale),
      )
    );
  };
};

const logLocalShare = Math.log(1 - steadyShare);
const logSteadyShare = Math.log(steadyShare);
