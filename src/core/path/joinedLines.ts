import { distanceMm, type Point } from './point.ts';
import { isClosed, lengthMm, type Polyline } from './polyline.ts';

/** One outline or open run as a person sees it, of one line or of several that meet end to end. */
export interface JoinedLine {
  /** Which lines it is made of, in the order in which they meet. */
  readonly lines: readonly number[];
  readonly points: Polyline;
  readonly closed: boolean;
  readonly lengthMm: number;
  /** From its end back to its beginning; 0 where it closes. */
  readonly gapMm: number;
}

/** Ends this near to one another are one point: what a drawing rounds away, far below any kerf. */
export const sameEndMm = 0.05;

/**
 * Joins open lines that meet end to end, so that an outline drawn in pieces counts as one. Where more than two ends meet,
 * nobody can tell which belong together: they stay apart. Near O(points), by a grid of ends.
 */
export const joinLines = (lines: readonly Polyline[]): readonly JoinedLine[] => {
  const used = lines.map((line) => line.length < 2);
  const partner = partnersOf(lines);
  return lines.flatMap((line, i): readonly JoinedLine[] => {
    if (used[i] === true) return [];
    if (isClosed(line)) return [joined([i], [...line])];
    // Back to where the run begins (or once round), then forward.
    let start = 2 * i;
    for (let back = partner[start]; back !== undefined && back >> 1 !== i; back = partner[start]) {
      start = back ^ 1;
      if (used[start >> 1] === true) break;
    }
    const members: number[] = [];
    const points: Point[] = [];
    for (let end: number | undefined = start; end !== undefined; end = partner[end ^ 1]) {
      const member = end >> 1;
      if (used[member] === true) break;
      used[member] = true;
      members.push(member);
      const run = lines[member] ?? [];
      const ahead = end % 2 === 0 ? run : [...run].reverse();
      for (const [k, point] of ahead.entries())
        if (k > 0 || points.length === 0) points.push(point);
    }
    return [joined(members, points)];
  });
};

const joined = (members: readonly number[], points: Point[]): JoinedLine => {
  const first: Point = points[0] ?? [0, 0];
  const last: Point = points.at(-1) ?? [0, 0];
  const gap = distanceMm(first, last);
  const closes = points.length > 3 && gap <= sameEndMm;
  if (closes) points[points.length - 1] = first;
  return {
    lines: members,
    points,
    closed: closes,
    lengthMm: lengthMm(points),
    gapMm: closes ? 0 : gap,
  };
};

/** End 2i is where line i begins, 2i + 1 where it ends. For each end the only other one that it meets. */
const partnersOf = (lines: readonly Polyline[]): readonly (number | undefined)[] => {
  const ends: (Point | undefined)[] = lines.flatMap((line) =>
    line.length < 2 || isClosed(line) ? [undefined, undefined] : [line[0], line.at(-1)],
  );
  const cells = new Map<string, number[]>();
  const cellOf = (value: number): number => Math.floor(value / sameEndMm);
  ends.forEach((end, i) => {
    if (end === undefined) return;
    const key = `${String(cellOf(end[0]))} ${String(cellOf(end[1]))}`;
    const there = cells.get(key);
    if (there === undefined) cells.set(key, [i]);
    else there.push(i);
  });
  const met = ends.map((end, i): readonly number[] => {
    if (end === undefined) return [];
    const found: number[] = [];
    for (let dx = -1; dx <= 1; dx += 1) {
      for (let dy = -1; dy <= 1; dy += 1) {
        const key = `${String(cellOf(end[0]) + dx)} ${String(cellOf(end[1]) + dy)}`;
        for (const j of cells.get(key) ?? []) {
          const other = ends[j];
          if (j !== i && other !== undefined && distanceMm(end, other) <= sameEndMm) found.push(j);
          // With two it is known already that nobody can tell: of thousands at one place none is looked at twice.
          if (found.length > 1) return found;
        }
      }
    }
    return found;
  });
  return met.map((others, i) => {
    const [only, more] = others;
    return only !== undefined && more === undefined && met[only]?.length === 1 && met[only][0] === i
      ? only
      : undefined;
  });
};
