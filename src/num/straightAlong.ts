import type { NormalShape } from './adaptiveSampling.ts';
import { choleskyInto, choleskySolve } from './cholesky.ts';
import {
  minusHessian,
  newtonMode,
  positiveFactor,
  spreadAt,
  type LogDensity,
  type Mode,
} from './newtonMode.ts';

/**
 * Coordinates x in which a function bent along one axis is nearly normal: the axis is kept, and at each value of it the others
 * are counted from their conditional mode there, in steps of their conditional spread. With three parts of a curve, as the
 * nodes of Rue, Martino & Chopin (2009), JRSS B 71:319, have it.
 */
export interface Straight {
  /** Writes y for x; gives ln |dy/dx|. */
  readonly toBent: (x: Float64Array, into: Float64Array) => number;
  /** In x, the normal about a mode in y. */
  readonly normalAbout: (normal: NormalShape) => NormalShape;
}

export interface StraightWish {
  readonly axis: number;
  /** How far apart the nodes stand at least and at most; between these a standard deviation of the axis. */
  readonly spacing: { readonly least: number; readonly most: number };
  /** No direction counts as wider than of this curvature. */
  readonly leastCurvature: number;
}

/** Nodes on each side of the mode. */
const eachSide = 3;

interface Node {
  /** The conditional mode, from the mode. */
  readonly place: Float64Array;
  /** Minus the second derivatives, row-major; the row of the axis is that of the unit matrix. */
  readonly curvature: Float64Array;
}

/** Places are joined by cubics and go straight on beyond the last node; curvatures are mixed. A search and its last curvature a node. */
export const straightAlong = (
  logDensity: LogDensity,
  mode: Mode,
  { axis, spacing, leastCurvature }: StraightWish,
): Straight => {
  const size = mode.point.length;
  const middle = mode.point[axis] ?? NaN;
  const step = Math.min(spacing.most, Math.max(spacing.least, spreadAt(mode, axis)));
  const curvatureAt = (point: Float64Array): Float64Array => {
    const gradient = new Float64Array(size);
    logDensity(point, gradient);
    const curvature = minusHessian(logDensity, point, gradient, [axis]);
    positiveFactor(curvature, size, leastCurvature);
    return curvature;
  };
  const nodes: Node[] = [];
  nodes[eachSide] = { place: new Float64Array(size), curvature: curvatureAt(mode.point) };
  for (const side of [-1, 1]) {
    let { curvature } = nodes[eachSide];
    let [before, from] = [mode.point, mode.point];
    for (let k = 1; k <= eachSide; k += 1) {
      // As it went from the node before last to the last.
      const start = from.map((y, d) => 2 * y - (before[d] ?? NaN));
      start[axis] = middle + side * k * step;
      before = from;
      from = followed(logDensity, start, curvature, axis);
      curvature = curvatureAt(from);
      const place = from.map((y, d) => (d === axis ? 0 : y - (mode.point[d] ?? NaN)));
      nodes[eachSide + side * k] = { place, curvature };
    }
  }
  const last = nodes.length - 1;
  const slopes = nodes.map((_, k) => {
    const [from, to] = [Math.max(0, k - 1), Math.min(last, k + 1)];
    const [a, b] = [nodes[from]?.place, nodes[to]?.place];
    return Float64Array.from(
      { length: size },
      (__, d) => ((b?.[d] ?? NaN) - (a?.[d] ?? NaN)) / (to - from),
    );
  });

  const place = new Float64Array(size);
  const slope = new Float64Array(size);
  const mixed = new Float64Array(size * size);
  const factor = new Float64Array(size * size);
  /** Writes where the conditional mode stands at a value of the axis, how fast it moves, and the factor of the curvature. */
  const moveTo = (value: number): void => {
    const x = (value - middle) / step + eachSide;
    const k = Math.min(last - 1, Math.max(0, Math.floor(x)));
    const t = Math.min(1, Math.max(0, x - k));
    const u = 1 - t;
    const beyond = x - k - t;
    const [left, right, p, q] = [nodes[k], nodes[k + 1], slopes[k], slopes[k + 1]];
    for (let d = 0; d < size; d += 1) {
      const [a, b] = [left?.place[d] ?? NaN, right?.place[d] ?? NaN];
      const [sa, sb] = [p?.[d] ?? NaN, q?.[d] ?? NaN];
      const rise = 6 * t * u * (b - a) + u * (1 - 3 * t) * sa + t * (3 * t - 2) * sb;
      slope[d] = rise / step;
      place[d] =
        u * u * (1 + 2 * t) * a +
        t * t * (3 - 2 * t) * b +
        t * u * (u * sa - t * sb) +
        beyond * rise;
    }
    for (let i = 0; i < mixed.length; i += 1)
      mixed[i] = u * (left?.curvature[i] ?? NaN) + t * (right?.curvature[i] ?? NaN);
    choleskyInto(mixed, size, factor);
  };

  const toBent: Straight['toBent'] = (x, into) => {
    const value = x[axis] ?? NaN;
    moveTo(value);
    let ln = 0;
    // Lᵀy = x
    for (let i = size - 1; i >= 0; i -= 1) {
      let sum = x[i] ?? NaN;
      for (let k = i + 1; k < size; k += 1) sum -= (factor[k * size + i] ?? NaN) * (into[k] ?? NaN);
      const pivot = factor[i * size + i] ?? NaN;
      into[i] = sum / pivot;
      ln -= Math.log(pivot);
    }
    for (let d = 0; d < size; d += 1)
      if (d !== axis) into[d] = (into[d] ?? NaN) + (mode.point[d] ?? NaN) + (place[d] ?? NaN);
    return ln;
  };

  const normalAbout: Straight['normalAbout'] = ({ mean, factor: own }) => {
    moveTo(mean[axis] ?? NaN);
    /** Lᵀ times what is left of a vector beside the ridge. */
    const straightened = (off: (d: number) => number): Float64Array =>
      Float64Array.from({ length: size }, (_, i) => {
        if (i === axis) return off(axis);
        let sum = 0;
        for (let k = i; k < size; k += 1)
          if (k !== axis) sum += (factor[k * size + i] ?? NaN) * off(k);
        return sum;
      });
    const columns = Array.from({ length: size }, (_, c) => {
      const along = own[axis * size + c] ?? NaN;
      return straightened((d) =>
        d === axis ? along : (own[d * size + c] ?? NaN) - along * (slope[d] ?? NaN),
      );
    });
    const covariance = new Float64Array(size * size);
    for (let a = 0; a < size; a += 1)
      for (let b = 0; b < size; b += 1)
        covariance[a * size + b] = columns.reduce(
          (sum, column) => sum + (column[a] ?? NaN) * (column[b] ?? NaN),
          0,
        );
    return {
      mean: straightened((d) =>
        d === axis
          ? (mean[axis] ?? NaN)
          : (mean[d] ?? NaN) - (mode.point[d] ?? NaN) - (place[d] ?? NaN),
      ),
      factor: positiveFactor(covariance, size),
    };
  };

  return { toBent, normalAbout };
};

/** Twice the rise that a place on the ridge may leave out. */
const nearEnough = 0.02;
const mostSteps = 6;

/** From near the ridge onto it: by steps with the curvature next to it, a gradient each; by a search where these do not do. */
const followed = (
  logDensity: LogDensity,
  start: Float64Array,
  curvature: Float64Array,
  axis: number,
): Float64Array => {
  const size = start.length;
  const factor = positiveFactor(Float64Array.from(curvature), size);
  const gradient = new Float64Array(size);
  let [best, leastRise, at] = [start, Infinity, start];
  for (let k = 0; k < mostSteps && leastRise > nearEnough; k += 1) {
    logDensity(at, gradient);
    gradient[axis] = 0;
    const move = choleskySolve(factor, size, gradient);
    const rise = move.reduce((sum, d, i) => sum + d * (gradient[i] ?? NaN), 0);
    if (!(rise < leastRise)) break;
    [best, leastRise] = [at, rise];
    at = at.map((y, d) => y + (move[d] ?? NaN));
  }
  return leastRise <= nearEnough
    ? best
    : newtonMode(logDensity, best, { held: [axis], mostIterations: 12, enough: nearEnough }).point;
};
