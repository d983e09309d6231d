import {
  newtonMode,
  positiveFactor,
  spreadAt,
  type LogDensity,
  type Mode,
} from '../../num/newtonMode.ts';
import { normalQuantile } from '../../num/normal.ts';
import {
  conditionalShapes,
  freeOrder,
  leastCurvature,
  type ShapeNode,
} from './conditionalShape.ts';
import type { Target } from './likelihood.ts';
import { marginalFrom } from './scatterMarginal.ts';

/**
 * A density from which lines are drawn in place of the points of the posterior. First ln σ, from its marginal by Laplace's
 * approximation at a few values; then the scales of sheet and batch scatter, half from their priors and half about the
 * mode; then all the rest but one step, given these, from a normal about the conditional mode. The last step, along which
 * ln v50 moves and the rest by their regressions on it, is not drawn at all: the posterior is evaluated at even distances all
 * along it, so that neither a tail nor another hill there (a doubtful cell either a slip or not) is missed.
 * Rue, Martino & Chopin (2009), JRSS B 71:319 (the nodes); Koutsourelakis, Pradlwarter & Schuëller (2004), Prob. Eng. Mech.
 * 19:409 (sampling by lines).
 */
export interface Proposal {
  /** Turns a point of the unit cube, of one dimension more than z, into a line. */
  readonly draw: (cube: Float64Array, into: Line) => void;
}

/** Points z = origin + k·step for every whole k. */
export interface Line {
  readonly origin: Float64Array;
  readonly step: Float64Array;
  /** ln of how many points of all the lines that may be drawn there are, for each unit of z's space, about point k. */
  logDensityAt: (k: number) => number;
}

export const blankLine = (size: number): Line => ({
  origin: new Float64Array(size),
  step: new Float64Array(size),
  logDensityAt: () => 0,
});

/** Where the marginal's nodes stand about the mode, in its own standard deviations. */
const nodeOffsets = [-3, -2, -1, 0, 1, 2, 3, 4];
const middle = nodeOffsets.indexOf(0);

/**
 * Where the scales of sheet and batch scatter are held while the nodes are found: at their prior medians, or at the mode
 * where that is wider. Held too narrow, effects that lie far apart would be reached by no draw.
 */
const leastHeldScale = 0;
const mostHeldScale = 3;

export const proposalFor = (target: Target): Proposal => {
  const { lnSigma } = target.layout;
  let mode = highestMode(target);
  for (let again = 0; ; again += 1) {
    const about = nodesAbout(target, mode);
    const highest = about.nodes.reduce((a, b) => (b.logMarginal > a.logMarginal ? b : a));
    const off = Math.abs(highest.position - (mode.point[lnSigma] ?? NaN)) / about.spacing;
    if (off < farOff || again === mostMoves) return { draw: drawFrom(target, about) };
    // The nodes climbed a higher hill than the mode's: from there it is seen whole.
    const climbed = newtonMode(target.logDensity, highest.mode, { enough: nearEnough });
    if (!(climbed.value > mode.value)) return { draw: drawFrom(target, about) };
    mode = climbed;
  }
};

/** So many nodes beside the mode a higher one stands on another hill. */
const farOff = 1.5;
const mostMoves = 3;

/** The posterior about its mode, at a few values of ln σ. */
interface AboutSummit {
  readonly nodes: readonly ShapeNode[];
  readonly spacing: number;
  readonly scales: readonly ScaleMarginal[];
  readonly held: readonly number[];
  readonly heldAt: Float64Array;
}

const nodesAbout = (target: Target, mode: Mode): AboutSummit => {
  const { lnSigma } = target.layout;
  const scales = scaleMarginals(target, mode);
  const held = [lnSigma, ...scales.map(({ axis }) => axis)];
  const marginalSd = Math.min(1.2, Math.max(0.15, spreadAt(mode, lnSigma)));
  const nodes: ShapeNode[] = [];
  const build = (index: number, start: Float64Array): Float64Array => {
    const position = (mode.point[lnSigma] ?? NaN) + (nodeOffsets[index] ?? NaN) * marginalSd;
    const from = Float64Array.from(start);
    from[lnSigma] = position;
    const conditional = newtonMode(target.logDensity, from, {
      held,
      mostIterations: 12,
      enough: nearEnough,
    });
    nodes[index] = nodeAt(target, conditional, held, position);
    return conditional.point;
  };
  const start = Float64Array.from(mode.point);
  for (const { axis } of scales) {
    start[axis] = Math.min(mostHeldScale, Math.max(leastHeldScale, mode.point[axis] ?? NaN));
  }
  let from = build(middle, start);
  for (let index = middle - 1; index >= 0; index -= 1) from = build(index, from);
  from = nodes[middle]?.mode ?? start;
  for (let index = middle + 1; index < nodeOffsets.length; index += 1) from = build(index, from);
  return { nodes, spacing: marginalSd, scales, held, heldAt: start };
};

/** A search ends within a tenth of a standard deviation of the mode: a proposal needs no more. */
const nearEnough = 0.01;

/** Starts of ln v50 and ln σ, in prior standard deviations: the hills of a surprising card lie far from the prior. */
const levelStarts = Array.from({ length: 41 }, (_, i) => -5 + i / 4);
/** With the scale of scatter among sheets and batches: sheets that lie apart look like scatter of shapes, and the other way. */
const scatterStarts = [
  { shapes: -0.5, sheets: 0 },
  { shapes: 1.5, sheets: 0 },
  { shapes: 3.5, sheets: 0 },
  { shapes: 0, sheets: 2 },
] as const;

/** The best start for each scatter. */
export const startsOf = (target: Pick<Target, 'layout' | 'value'>): readonly Float64Array[] => {
  const { size, lnV50, lnSigma, sheetSd, batchSd } = target.layout;
  return scatterStarts.map(({ shapes, sheets }) => {
    let best = new Float64Array(size);
    let bestValue = -Infinity;
    for (const level of levelStarts) {
      const start = new Float64Array(size);
      start[lnV50] = level;
      start[lnSigma] = shapes;
      if (sheetSd >= 0) start[sheetSd] = sheets;
      if (batchSd >= 0) start[batchSd] = sheets;
      const value = target.value(start);
      if (value > bestValue) {
        best = start;
        bestValue = value;
      }
    }
    return best;
  });
};

/** Goes from the best start for each scatter, or from others that are known. */
export const modesOf = (
  target: Target,
  starts: readonly Float64Array[] = startsOf(target),
): readonly Mode[] => modesFrom(starts, target.logDensity);

export const modesFrom = (
  starts: readonly Float64Array[],
  logDensity: LogDensity,
): readonly Mode[] => starts.map((start) => newtonMode(logDensity, start, { enough: nearEnough }));

const highestMode = (target: Target): Mode =>
  modesOf(target).reduce((highest, mode) => (mode.value > highest.value ? mode : highest));

/** How one scale of scatter is drawn. */
interface ScaleMarginal {
  readonly axis: number;
  readonly mean: number;
  readonly sd: number;
}

const scaleMarginals = (target: Target, mode: Mode): readonly ScaleMarginal[] => {
  const { sheetSd, batchSd } = target.layout;
  return [sheetSd, batchSd]
    .filter((axis) => axis >= 0)
    .map((axis) => ({
      axis,
      mean: Math.min(2.5, Math.max(-2, mode.point[axis] ?? NaN)),
      sd: 1.3 * Math.min(1, Math.max(0.3, spreadAt(mode, axis))),
    }));
};

const halfLog = Math.log(0.5);
const logRootTwoPi = 0.5 * Math.log(2 * Math.PI);

const normalLog = (x: number, mean: number, sd: number): number =>
  -0.5 * ((x - mean) / sd) ** 2 - Math.log(sd) - logRootTwoPi;

const logSum = (a: number, b: number): number =>
  Math.max(a, b) + Math.log1p(Math.exp(-Math.abs(a - b)));

const nodeAt = (
  target: Target,
  mode: Mode,
  held: readonly number[],
  position: number,
): ShapeNode => {
  const size = mode.point.length;
  const free = freeOrder(target.layout, held);
  const n = free.length;
  const factor = positiveFactor(
    Float64Array.from(free.flatMap((i) => free.map((j) => mode.curvature[i * size + j] ?? NaN))),
    n,
    leastCurvature,
  );
  const along = columnOfInverseTransposed(factor, n, n - 1);
  const there = Float64Array.from(mode.point);
  const { width, lnMass } = widthOf((by) => {
    free.forEach((i, a) => (there[i] = (mode.point[i] ?? NaN) + by * (along[a] ?? NaN)));
    return target.value(there) - mode.value;
  });
  let logMarginal = mode.value + lnMass - logRootTwoPi;
  for (let a = 0; a < n; a += 1) logMarginal -= Math.log(factor[a * n + a] ?? NaN);
  return {
    position,
    logMarginal,
    mode: mode.point,
    curvature: mode.curvature,
    lnWidth: Math.log(width),
  };
};

const scanHalf = 8;

/**
 * Of a density along a line, 1 at 0: ln of its mass, and the standard deviation of the normal with this mass and height.
 * Where the search fell short it is higher elsewhere by more than a number can hold: so ln.
 */
const widthOf = (
  logDensity: (at: number) => number,
): { readonly width: number; readonly lnMass: number } => {
  const logs = new Float64Array(2 * scanHalf + 1);
  for (let spacing = 0.6, tries = 0; ; tries += 1) {
    let most = 0;
    for (let k = -scanHalf; k <= scanHalf; k += 1) {
      const log = logDensity(k * spacing);
      logs[k + scanHalf] = log;
      if (log > most) most = log;
    }
    let mass = 0;
    for (const log of logs) mass += spacing * Math.exp(log - most);
    const width = mass / Math.sqrt(2 * Math.PI);
    if (width > 0.9 * spacing || tries === 6) return { width, lnMass: most + Math.log(mass) };
    spacing *= 0.4;
  }
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
    for (let k = i + 1; k <= column; k += 1) sum -= (lower[k * n + i] ?? NaN) * (x[k] ?? NaN);
    x[i] = sum / (lower[i * n + i] ?? NaN);
  }
  return x;
};

/**
 * How far apart the points of a line stand, in its width s: the trapezoid rule on a normal then errs by 2·exp(−2π²/s²),
 * 0.3 %, which lines that begin at different places average out.
 */
const spacingInWidths = 1.75;

/**
 * What the lines are drawn from, each a share of them: the normal that the likelihood raised to a power leaves. The
 * posterior's own (1) is best where it is one hill; the others reach what that does not, as far as the prior itself (0). So no
 * weight is much larger than the likelihood's height over its mean. Hesterberg (1995), Technometrics 37:185.
 */
const kinds = [
  { power: 1, share: 0.6, scale: 1.1 },
  { power: 0.3, share: 0.2, scale: 1.1 },
  { power: 0, share: 0.2, scale: 1 },
] as const;

/** Which kind a coordinate of the cube takes. */
const kindAt = (u: number): number => {
  const [own, softened] = kinds;
  return u < own.share ? 0 : u < own.share + softened.share ? 1 : 2;
};

const drawFrom = (
  target: Target,
  { nodes, scales, held, heldAt }: AboutSummit,
): Proposal['draw'] => {
  const { size, lnSigma, lnV50 } = target.layout;
  const marginal = marginalFrom(nodes);
  const powers = kinds.map(({ power }) => power);
  const { free, shapes, moveTo } = conditionalShapes(nodes, target, held, heldAt, powers);
  const last = free.length - 1;
  const next = new Float64Array(size);
  const all = kinds.map(({ share, scale }, k) => ({
    scale,
    shape: shapes[k],
    constant: Math.log(share) - last * (logRootTwoPi + Math.log(scale)),
    /** Of the line that is being drawn: ln density up to the steps, steps at point 0, and from point to point. */
    base: 0,
    steps: new Float64Array(free.length),
    rise: new Float64Array(free.length),
  }));
  return (cube, line) => {
    const { origin, step } = line;
    const { position, logDensity } = marginal(cube[lnSigma] ?? NaN);
    let log = logDensity;
    origin[lnSigma] = position;
    for (const { axis, mean, sd } of scales) {
      const u = cube[axis] ?? NaN;
      const z = u < 0.5 ? normalQuantile(2 * u) : mean + sd * normalQuantile(2 * u - 1);
      origin[axis] = z;
      log += halfLog + logSum(normalLog(z, 0, 1), normalLog(z, mean, sd));
    }
    moveTo(position, origin);
    const drawn = all[kindAt(cube[size] ?? NaN)];
    if (!drawn?.shape) return;
    const { scale, shape, steps } = drawn;
    const spacing = spacingInWidths * shape.width;
    for (let a = 0; a < last; a += 1) {
      steps[a] = scale * normalQuantile(cube[free[a] ?? NaN] ?? NaN);
    }
    steps[last] = ((cube[lnV50] ?? NaN) - 0.5) * spacing;
    shape.place(steps, origin);
    step.fill(0);
    for (let a = 0; a <= last; a += 1) step[free[a] ?? NaN] = spacing * (shape.direction[a] ?? NaN);
    for (let i = 0; i < size; i += 1) next[i] = (origin[i] ?? NaN) + (step[i] ?? NaN);
    for (const kind of all) {
      if (!kind.shape) continue;
      kind.shape.stepsTo(origin, kind.steps);
      kind.shape.stepsTo(next, kind.rise);
      for (let a = 0; a < last; a += 1) {
        const here = kind.steps[a] ?? NaN;
        kind.rise[a] = ((kind.rise[a] ?? NaN) - here) / kind.scale;
        kind.steps[a] = here / kind.scale;
      }
      kind.base =
        kind.constant + kind.shape.logJacobian - Math.log(spacingInWidths * kind.shape.width);
    }
    line.logDensityAt = (k) => {
      let total = 0;
      for (const kind of all) {
        let squares = 0;
        for (let a = 0; a < last; a += 1) {
          const stepThere = (kind.steps[a] ?? NaN) + k * (kind.rise[a] ?? NaN);
          squares += stepThere * stepThere;
        }
        total += Math.exp(kind.base - 0.5 * squares);
      }
      return log + Math.log(Math.max(leastDensity, total));
    };
  };
};

/** Of a draw so far out that its density underflows: there is no posterior either. */
const leastDensity = 1e-300;
