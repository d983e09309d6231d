import { solveLower } from '../../num/cholesky.ts';
import { newtonClimb, type Summit } from '../../num/newton.ts';
import { normalQuantile } from '../../num/normal.ts';
import type { Target } from './likelihood.ts';

/**
 * A density from which points are drawn in place of the posterior, close to it and never thinner in the tails:
 * the marginal of z(ln σ) from Laplace's approximation at a few of its values, and, given it, a two-piece normal about
 * the conditional mode along the columns of the inverse curvature's root.
 * Geweke (1989), Econometrica 57:1317 (two-piece scales); Rue, Martino & Chopin (2009), JRSS B 71:319 (the nodes).
 */
export interface Proposal {
  readonly size: number;
  /** Turns a point of the unit cube of one dimension more than `size` into a draw, and returns the log of the density there (normalised). */
  readonly draw: (cube: (dimension: number) => number, into: Float64Array) => number;
  /** Newton steps spent. */
  readonly iterations: number;
}

/** Where the marginal's nodes stand about the mode, in its own standard deviations. */
const nodeOffsets = [-3, -2, -1, 0, 1, 2, 3, 4];
/** How much wider than the local scale the draws are made. */
const widening = 1.08;
/**
 * A share of the draws does not follow the conditional density below the mode's own ln σ: there the posterior breaks up
 * into several hills (each doubtful cell either a slip or not), which lie where the mode's own spread reaches.
 */
const steadyShare = 0.3;
const steadyScale = 1.3;
/** How far along a direction, in local standard deviations, the drop of the log density is looked at. */
const lookAhead = 1.6;
const leastScale = 0.6;
const mostScale = 3;

interface Node {
  readonly position: number;
  readonly logMarginal: number;
  readonly mode: Float64Array;
  /** Root of the conditional covariance, row-major; the row and column of ln σ are those of the unit matrix. */
  readonly root: Float64Array;
  /** Two-piece scales by direction: below and above. */
  readonly below: Float64Array;
  readonly above: Float64Array;
}

export const proposalFor = (target: Target): Proposal => {
  const { size } = target.layout;
  const axis = target.layout.lnSigma;
  const summit = highestSummit(target);
  const marginalSd = Math.min(1.2, Math.max(0.15, marginalSdOf(summit, axis, size)));
  let iterations = summit.iterations;
  const middle = nodeOffsets.indexOf(0);
  const nodes: Node[] = [];
  const build = (index: number, start: Float64Array): Float64Array => {
    const position = (summit.point[axis] ?? 0) + (nodeOffsets[index] ?? 0) * marginalSd;
    const from = Float64Array.from(start);
    from[axis] = position;
    const conditional = newtonClimb(target.climb, from, { held: axis, mostIterations: 12 });
    iterations += conditional.iterations;
    nodes[index] = nodeAt(target, conditional, axis, position);
    return conditional.point;
  };
  let from = build(middle, summit.point);
  for (let index = middle - 1; index >= 0; index -= 1) from = build(index, from);
  from = nodes[middle]?.mode ?? summit.point;
  for (let index = middle + 1; index < nodeOffsets.length; index += 1) from = build(index, from);
  return drawFrom(nodes, axis, size, iterations);
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

const nodeAt = (target: Target, summit: Summit, axis: number, position: number): Node => {
  const size = summit.point.length;
  const root = inverseTransposed(summit.factor, size);
  let logDeterminant = 0;
  for (let i = 0; i < size; i += 1) logDeterminant += Math.log(summit.factor[i * size + i] ?? 1);
  const below = new Float64Array(size).fill(1);
  const above = new Float64Array(size).fill(1);
  const there = new Float64Array(size);
  const scaleAlong = (direction: number, sign: 1 | -1): number => {
    for (let i = 0; i < size; i += 1) {
      there[i] = (summit.point[i] ?? 0) + sign * lookAhead * (root[i * size + direction] ?? 0);
    }
    const drop = summit.value - target.value(there);
    if (!(drop > 0)) return mostScale;
    return Math.min(mostScale, Math.max(leastScale, lookAhead / Math.sqrt(2 * drop)));
  };
  let logScales = 0;
  for (let direction = 0; direction < size; direction += 1) {
    if (direction === axis) continue;
    const low = scaleAlong(direction, -1);
    const high = scaleAlong(direction, 1);
    below[direction] = low * widening;
    above[direction] = high * widening;
    logScales += Math.log(0.5 * (low + high));
  }
  return {
    position,
    logMarginal: summit.value - logDeterminant + logScales,
    mode: summit.point,
    root,
    below,
    above,
  };
};

/** L⁻ᵀ, whose columns e are the directions in which the curvature is one: covariance = L⁻ᵀL⁻¹. Upper triangular. */
const inverseTransposed = (lower: Float64Array, n: number): Float64Array => {
  const result = new Float64Array(n * n);
  for (let column = 0; column < n; column += 1) {
    const unit = new Float64Array(n);
    unit[column] = 1;
    const x = solveLower(lower, n, unit);
    for (let i = 0; i < n; i += 1) result[column * n + i] = x[i] ?? 0;
  }
  return result;
};

const drawFrom = (
  nodes: readonly Node[],
  axis: number,
  size: number,
  iterations: number,
): Proposal => {
  const marginal = marginalFrom(nodes);
  const summitPosition = nodes[nodeOffsets.indexOf(0)]?.position ?? 0;
  const steps = new Float64Array(size);
  const local = shapeOf(nodes, axis, size);
  const steady = shapeOf(nodes, axis, size);
  const draw: Proposal['draw'] = (cube, into) => {
    const { position, logDensity } = marginal(cube(axis));
    local.moveTo(position, 1);
    steady.moveTo(Math.max(position, summitPosition), steadyScale);
    const drawn = cube(size) < steadyShare ? steady : local;
    for (let j = 0; j < size; j += 1) {
      if (j === axis) continue;
      const low = drawn.below[j] ?? 1;
      const high = drawn.above[j] ?? 1;
      const share = low / (low + high);
      const u = cube(j);
      // Two-piece normal: mass in proportion to the scales, so that the density is one curve.
      steps[j] =
        u < share
          ? low * normalQuantile((0.5 * u) / share)
          : high * normalQuantile(0.5 + (0.5 * (u - share)) / (1 - share));
    }
    drawn.place(steps, into);
    into[axis] = position;
    const a = Math.log(1 - steadyShare) + local.logDensity(into);
    const b = Math.log(steadyShare) + steady.logDensity(into);
    return logDensity + Math.max(a, b) + Math.log1p(Math.exp(-Math.abs(a - b)));
  };
  return { size, draw, iterations };
};

/** The two-piece normal of all parameters but ln σ, between the nodes; moved from draw to draw, so nothing is allocated. */
interface Shape {
  readonly below: Float64Array;
  readonly above: Float64Array;
  readonly moveTo: (position: number, scale: number) => void;
  /** mode + root·steps */
  readonly place: (steps: Float64Array, into: Float64Array) => void;
  readonly logDensity: (at: Float64Array) => number;
}

const logTwoOverRootTwoPi = Math.log(2 / Math.sqrt(2 * Math.PI));

const shapeOf = (nodes: readonly Node[], axis: number, size: number): Shape => {
  const mode = new Float64Array(size);
  const root = new Float64Array(size * size);
  const below = new Float64Array(size);
  const above = new Float64Array(size);
  const back = new Float64Array(size);
  let logScale = 0;
  const moveTo = (position: number, scale: number): void => {
    const { left, right, part } = between(nodes, position);
    logScale = 0;
    for (let i = 0; i < size; i += 1) {
      mode[i] = mix(left.mode, right.mode, i, part);
      if (i === axis) continue;
      below[i] = scale * mix(left.below, right.below, i, part);
      above[i] = scale * mix(left.above, right.above, i, part);
      for (let j = i; j < size; j += 1) {
        root[i * size + j] = j === axis ? 0 : mix(left.root, right.root, i * size + j, part);
      }
      logScale +=
        logTwoOverRootTwoPi -
        Math.log((below[i] ?? 1) + (above[i] ?? 1)) -
        Math.log(root[i * size + i] ?? 1);
    }
  };
  const place = (steps: Float64Array, into: Float64Array): void => {
    for (let i = 0; i < size; i += 1) {
      if (i === axis) continue;
      let sum = mode[i] ?? 0;
      for (let j = i; j < size; j += 1) {
        if (j !== axis) sum += (root[i * size + j] ?? 0) * (steps[j] ?? 0);
      }
      into[i] = sum;
    }
  };
  const logDensity = (at: Float64Array): number => {
    let log = logScale;
    for (let i = size - 1; i >= 0; i -= 1) {
      if (i === axis) continue;
      let rest = (at[i] ?? 0) - (mode[i] ?? 0);
      for (let j = i + 1; j < size; j += 1) {
        if (j !== axis) rest -= (root[i * size + j] ?? 0) * (back[j] ?? 0);
      }
      const step = rest / (root[i * size + i] ?? 1);
      back[i] = step;
      const standard = step / ((step < 0 ? below[i] : above[i]) ?? 1);
      log -= 0.5 * standard * standard;
    }
    return log;
  };
  return { below, above, moveTo, place, logDensity };
};

const mix = (left: Float64Array, right: Float64Array, i: number, part: number): number =>
  (left[i] ?? 0) + part * ((right[i] ?? 0) - (left[i] ?? 0));

const between = (
  nodes: readonly Node[],
  position: number,
): { readonly left: Node; readonly right: Node; readonly part: number } => {
  let index = 0;
  while (index < nodes.length - 2 && position > (nodes[index + 1]?.position ?? Infinity))
    index += 1;
  const left = nodes[index];
  const right = nodes[index + 1];
  if (!left || !right) throw new Error('a proposal has at least two nodes');
  const part = (position - left.position) / (right.position - left.position);
  return { left, right, part: Math.min(1, Math.max(0, part)) };
};

const gridSteps = 240;
/** Share of the draws that come from a wide normal instead, so that no tail is missed. */
const safeguard = 0.04;

/**
 * The marginal of z(ln σ): log density interpolated through the nodes (parabolas through three neighbours, blended),
 * tabulated as piecewise linear density, drawn by inverting its integral exactly.
 */
const marginalFrom = (
  nodes: readonly Node[],
): ((u: number) => { position: number; logDensity: number }) => {
  const first = nodes[0];
  const last = nodes.at(-1);
  if (!first || !last) throw new Error('a proposal has at least two nodes');
  const width = last.position - first.position;
  const low = first.position - 0.35 * width;
  const high = last.position + 0.35 * width;
  const step = (high - low) / gridSteps;
  const best = Math.max(...nodes.map((node) => node.logMarginal));
  const density = Float64Array.from({ length: gridSteps + 1 }, (_, i) => {
    const at = low + i * step;
    return Math.exp(Math.max(-60, logThrough(nodes, at) - best));
  });
  const centre = 0.5 * (low + high);
  const spread = width / 4;
  const trapezoid = (values: Float64Array): number => {
    let sum = 0;
    for (let i = 0; i < gridSteps; i += 1)
      sum += 0.5 * step * ((values[i] ?? 0) + (values[i + 1] ?? 0));
    return sum;
  };
  const total = trapezoid(density);
  const wide = Float64Array.from(density, (_, i) =>
    Math.exp(-0.5 * ((low + i * step - centre) / spread) ** 2),
  );
  const wideTotal = trapezoid(wide);
  const mixed = Float64Array.from(
    density,
    (value, i) => ((1 - safeguard) * value) / total + (safeguard * (wide[i] ?? 0)) / wideTotal,
  );
  const cumulative = new Float64Array(gridSteps + 1);
  for (let i = 0; i < gridSteps; i += 1) {
    cumulative[i + 1] = (cumulative[i] ?? 0) + 0.5 * step * ((mixed[i] ?? 0) + (mixed[i + 1] ?? 0));
  }
  const whole = cumulative[gridSteps] ?? 1;
  return (u) => {
    const wanted = u * whole;
    let from = 0;
    let to = gridSteps;
    while (to - from > 1) {
      const middle = (from + to) >> 1;
      if ((cumulative[middle] ?? 0) <= wanted) from = middle;
      else to = middle;
    }
    const d0 = mixed[from] ?? 0;
    const slope = ((mixed[from + 1] ?? 0) - d0) / step;
    const rest = wanted - (cumulative[from] ?? 0);
    // rest = d0·x + slope·x²/2, solved without cancellation.
    const x = (2 * rest) / (d0 + Math.sqrt(Math.max(0, d0 * d0 + 2 * slope * rest)));
    return { position: low + from * step + x, logDensity: Math.log((d0 + slope * x) / whole) };
  };
};

/** Cubic through the nodes' log marginals (Catmull–Rom on even spacing), straight on beyond them at the last slope. */
const logThrough = (nodes: readonly Node[], at: number): number => {
  const spacing = (nodes[1]?.position ?? 1) - (nodes[0]?.position ?? 0);
  const place = (at - (nodes[0]?.position ?? 0)) / spacing;
  const value = (i: number): number => nodes[i]?.logMarginal ?? 0;
  const lastIndex = nodes.length - 1;
  if (place <= 0) return value(0) + Math.max(0.2, value(1) - value(0)) * place;
  if (place >= lastIndex) {
    return (
      value(lastIndex) +
      Math.min(-0.2, value(lastIndex) - value(lastIndex - 1)) * (place - lastIndex)
    );
  }
  const i = Math.min(lastIndex - 1, Math.floor(place));
  const t = place - i;
  const before = i > 0 ? value(i - 1) : 2 * value(0) - value(1);
  const after = i + 2 <= lastIndex ? value(i + 2) : 2 * value(lastIndex) - value(lastIndex - 1);
  const m0 = 0.5 * (value(i + 1) - before);
  const m1 = 0.5 * (after - value(i));
  return (
    (2 * t ** 3 - 3 * t ** 2 + 1) * value(i) +
    (t ** 3 - 2 * t ** 2 + t) * m0 +
    (-2 * t ** 3 + 3 * t ** 2) * value(i + 1) +
    (t ** 3 - t ** 2) * m1
  );
};
