/** A piecewise cubic through knots, without overshoot: between two knots it never leaves the range of their values. */
export interface MonotoneCubic {
  /** Strictly ascending. */
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly slopes: readonly number[];
}

/** One piece: the cubic between two neighbouring knots. */
interface Piece {
  readonly x0: number;
  readonly x1: number;
  readonly width: number;
  readonly y0: number;
  readonly y1: number;
  readonly slope0: number;
  readonly slope1: number;
}

/**
 * The shape-preserving cubic of Fritsch & Carlson 1980 with the slopes of Fritsch & Butland 1984: inside, a weighted
 * harmonic mean of the neighbouring secants, 0 where they differ in sign; at the ends a three-point formula held to
 * the secant's sign and to three times its size. Two knots give the straight line. O(n).
 *
 * @throws RangeError unless there are at least two knots, finite, strictly ascending in x.
 */
export const monotoneCubic = (x: readonly number[], y: readonly number[]): MonotoneCubic => {
  const widths = x.slice(1).map((right, i) => right - (x[i] ?? NaN));
  const secants = widths.map((width, i) => ((y[i + 1] ?? NaN) - (y[i] ?? NaN)) / width);
  const sound = widths.every((width) => width > 0) && secants.every(Number.isFinite);
  if (widths.length === 0 || y.length !== x.length || !sound) {
    throw new RangeError('monotoneCubic: at least two finite knots, strictly ascending in x');
  }
  const slopes = x.map((_, k) => slopeAtKnot(k, widths, secants));
  return { x, y, slopes };
};

const slopeAtKnot = (k: number, widths: readonly number[], secants: readonly number[]): number => {
  const [h0, h1] = [widths[k - 1], widths[k]];
  const [m0, m1] = [secants[k - 1], secants[k]];
  if (h0 === undefined || m0 === undefined) return endSlope(widths, secants);
  if (h1 === undefined || m1 === undefined) {
    return endSlope(widths.toReversed(), secants.toReversed());
  }
  if (m0 * m1 <= 0) return 0;
  const [w0, w1] = [2 * h1 + h0, h1 + 2 * h0];
  return (w0 + w1) / (w0 / m0 + w1 / m1);
};

/** The slope at the end where the lists begin. */
const endSlope = (widths: readonly number[], secants: readonly number[]): number => {
  const [h0 = NaN, h1] = widths;
  const [m0 = NaN, m1] = secants;
  if (h1 === undefined || m1 === undefined) return m0;
  const slope = ((2 * h0 + h1) * m0 - h0 * m1) / (h0 + h1);
  if (slope * m0 <= 0) return 0;
  return m0 * m1 < 0 && Math.abs(slope) > 3 * Math.abs(m0) ? 3 * m0 : slope;
};

/** The curve's height at `x`. @throws RangeError outside the knots: how to go on there is the caller's decision. */
export const valueAt = (curve: MonotoneCubic, x: number): number => {
  const piece = pieceAt(curve, x);
  const { y0, y1, width, slope0, slope1 } = piece;
  if (x === piece.x1) return y1;
  const t = (x - piece.x0) / width;
  const rise = t * t * (3 - 2 * t);
  return y0 + (y1 - y0) * rise + width * t * (1 - t) * ((1 - t) * slope0 - t * slope1);
};

/** The curve's slope at `x`. @throws RangeError outside the knots. */
export const slopeAt = (curve: MonotoneCubic, x: number): number => {
  const { x0, y0, y1, width, slope0, slope1 } = pieceAt(curve, x);
  const t = (x - x0) / width;
  const secant = (y1 - y0) / width;
  return 6 * secant * t * (1 - t) + (1 - t) * (1 - 3 * t) * slope0 - t * (2 - 3 * t) * slope1;
};

/** The area under the curve from the first knot to the last. Exact for the cubic. */
export const areaUnder = (curve: MonotoneCubic): number =>
  pieces(curve).reduce(
    (sum, { width, y0, y1, slope0, slope1 }) =>
      sum + width * ((y0 + y1) / 2 + (width * (slope0 - slope1)) / 12),
    0,
  );

/**
 * The largest x between the knots at which a never-falling curve is still at or below `value`; null where it never is,
 * or where it is so all the way to the last knot but `value` is above it. By bracketing in the one piece that crosses:
 * the answer's own height is at or below `value`, to the last bit.
 */
export const lastXAtOrBelow = (curve: MonotoneCubic, value: number): number | null => {
  const last = curve.y.length - 1;
  const k = curve.y.findLastIndex((y) => y <= value);
  const [low, high] = [curve.x[k], curve.x[k + 1]];
  if (low === undefined) return null;
  if (high === undefined) return curve.y[last] === value ? low : null;
  let [below, above] = [low, high];
  for (let halving = 0; halving < 200; halving += 1) {
    const middle = below + (above - below) / 2;
    if (middle <= below || middle >= above) break;
    if (valueAt(curve, middle) <= value) below = middle;
    else above = middle;
  }
  return below;
};

const pieceAt = (curve: MonotoneCubic, x: number): Piece => {
  const k = curve.x.findLastIndex((knot) => knot <= x);
  const piece = pieceFrom(curve, Math.min(k, curve.x.length - 2));
  if (piece === null || x > piece.x1) {
    throw new RangeError(`monotoneCubic: ${x} lies outside the knots`);
  }
  return piece;
};

const pieces = (curve: MonotoneCubic): readonly Piece[] =>
  curve.x.flatMap((_, k) => pieceFrom(curve, k) ?? []);

const pieceFrom = ({ x, y, slopes }: MonotoneCubic, k: number): Piece | null => {
  const [x0, x1, y0, y1] = [x[k], x[k + 1], y[k], y[k + 1]];
  const [slope0, slope1] = [slopes[k], slopes[k + 1]];
  if (x0 === undefined || x1 === undefined || y0 === undefined || y1 === undefined) return null;
  if (slope0 === undefined || slope1 === undefined) return null;
  return { x0, x1, width: x1 - x0, y0, y1, slope0, slope1 };
};
