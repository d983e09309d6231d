import { distanceMm, type Point } from './point.ts';

interface Through {
  readonly points: readonly Point[];
  /** Directions at the ends; where none is said the curve ends without bending (a natural spline). */
  readonly startWay?: Point;
  readonly endWay?: Point;
  readonly closed: boolean;
}

/**
 * A smooth curve through points, as cubic Bézier pieces: the cubic spline over the lengths of the chords (de Boor, "A
 * practical guide to splines", 1978, chapter IV). Drawing programs that keep only the points draw their own curve
 * through them, which differs between the points. O(points).
 */
export const splineThrough = (through: Through): readonly (readonly Point[])[] => {
  const apart = through.points.filter((point, i, all) => {
    const before = all[i - 1];
    return before === undefined || distanceMm(before, point) > 0;
  });
  if (!through.closed) return pieces({ ...through, points: apart });
  const [first, last] = [apart[0], apart.at(-1)];
  if (first === undefined || last === undefined) return [];
  const round = distanceMm(first, last) === 0 ? apart.slice(0, -1) : apart;
  if (round.length < 3) return pieces({ points: [...round, first], closed: true });
  // Round it goes on beyond both ends, far enough that how it ends there is not felt: each point takes a factor of 3.7.
  const wrapped = Array.from({ length: round.length + 2 * lap + 1 }, (_, i) => {
    const behind = (i - lap) % round.length;
    return round[behind < 0 ? behind + round.length : behind] ?? first;
  });
  return pieces({ points: wrapped, closed: true }).slice(lap, lap + round.length);
};

/** Points gone on beyond an end of a closed curve: 3.7 to the power of 14 is a hundred million. */
const lap = 14;

const pieces = ({ points, startWay, endWay }: Through): readonly (readonly Point[])[] => {
  const spans = points.slice(1).map((to, i) => distanceMm(points[i] ?? to, to));
  const slopes = ([0, 1] as const).map((axis) =>
    slopesThrough(
      points.map((point) => point[axis]),
      spans,
      unit(startWay)?.[axis],
      unit(endWay)?.[axis],
    ),
  );
  const slope = (i: number): Point => [slopes[0]?.[i] ?? NaN, slopes[1]?.[i] ?? NaN];
  return points.slice(1).map((to, i) => {
    const from = points[i] ?? to;
    const third = (spans[i] ?? NaN) / 3;
    const [a, b] = [slope(i), slope(i + 1)];
    return [
      from,
      [from[0] + a[0] * third, from[1] + a[1] * third],
      [to[0] - b[0] * third, to[1] - b[1] * third],
      to,
    ];
  });
};

const unit = (way: Point | undefined): Point | undefined => {
  const length = way === undefined ? 0 : Math.hypot(...way);
  return way === undefined || !(length > 0) ? undefined : [way[0] / length, way[1] / length];
};

/** Slopes at the points for which the second derivative has no jump: a system of three diagonals, solved in two sweeps. */
const slopesThrough = (
  values: readonly number[],
  spans: readonly number[],
  start: number | undefined,
  end: number | undefined,
): readonly number[] => {
  const last = values.length - 1;
  if (last < 1) return values.map(() => 0);
  const rise = (i: number): number =>
    ((values[i + 1] ?? NaN) - (values[i] ?? NaN)) / (spans[i] ?? NaN);
  const upper: number[] = [];
  const right: number[] = [];
  for (let i = 0; i <= last; i += 1) {
    const row = rowOf(i, last, spans, rise, start, end);
    const pivot = row.here - row.before * (upper[i - 1] ?? 0);
    upper.push(row.after / pivot);
    right.push((row.right - row.before * (right[i - 1] ?? 0)) / pivot);
  }
  for (let i = last - 1; i >= 0; i -= 1)
    right[i] = (right[i] ?? NaN) - (upper[i] ?? NaN) * (right[i + 1] ?? NaN);
  return right;
};

interface Row {
  readonly before: number;
  readonly here: number;
  readonly after: number;
  readonly right: number;
}

const rowOf = (
  i: number,
  last: number,
  spans: readonly number[],
  rise: (i: number) => number,
  start: number | undefined,
  end: number | undefined,
): Row => {
  const said = i === 0 ? start : i === last ? end : undefined;
  if (said !== undefined) return { before: 0, here: 1, after: 0, right: said };
  if (i === 0) return { before: 0, here: 2, after: 1, right: 3 * rise(0) };
  if (i === last) return { before: 1, here: 2, after: 0, right: 3 * rise(last - 1) };
  const [behind, ahead] = [spans[i - 1] ?? 1, spans[i] ?? 1];
  return {
    before: ahead,
    here: 2 * (behind + ahead),
    after: behind,
    right: 3 * (ahead * rise(i - 1) + behind * rise(i)),
  };
};
