import { distanceMm, type Point } from './point.ts';
import { isClosed, type Polyline } from './polyline.ts';

/** Ends nearer than this are one place, mm. */
const touchMm = 0.02;

/**
 * Open lines that touch end to end, put together: a shape that was saved as single strokes is whole again. Each entry
 * names the lines that it was made of, in the order in which it runs through them. Closed lines stay as they are, and no
 * line is joined to its own copy. O(n) for drawings as they are.
 */
export const joinTouching = (
  lines: readonly Polyline[],
): readonly { readonly points: Polyline; readonly of: readonly number[] }[] => {
  const open = new Set<number>();
  const ends = new Map<string, number[]>();
  lines.forEach((line, i) => {
    if (line.length < 2 || isClosed(line)) return;
    open.add(i);
    for (const end of [line[0], line.at(-1)]) {
      if (end === undefined) continue;
      const there = ends.get(keyOf(end));
      if (there === undefined) ends.set(keyOf(end), [i]);
      else there.push(i);
    }
  });
  /** An open line that begins or ends at a place, turned so that it begins there. */
  const nextAt = (at: Point, last: Polyline): { points: Polyline; i: number } | undefined => {
    for (const key of keysAround(at))
      for (const i of ends.get(key) ?? []) {
        const line = lines[i];
        if (line === undefined || !open.has(i) || isCopy(line, last)) continue;
        const [first, end] = [line[0], line.at(-1)];
        if (first !== undefined && distanceMm(first, at) <= touchMm) return { points: line, i };
        if (end !== undefined && distanceMm(end, at) <= touchMm)
          return { points: line.toReversed(), i };
      }
    return undefined;
  };
  return lines.flatMap((line, i) => {
    if (line.length < 2 || isClosed(line)) return [{ points: line, of: [i] }];
    if (!open.has(i)) return [];
    open.delete(i);
    let points: Point[] = [...line];
    let of = [i];
    let last = line;
    const grow = (): void => {
      for (;;) {
        const [start, end] = [points[0], points.at(-1)];
        if (start === undefined || end === undefined || distanceMm(start, end) <= touchMm) break;
        const next = nextAt(end, last);
        if (next === undefined) break;
        open.delete(next.i);
        of.push(next.i);
        for (const point of next.points.slice(1)) points.push(point);
        last = next.points;
      }
    };
    grow();
    // Then from the other end.
    points = points.toReversed();
    of = of.toReversed();
    last = lines[of.at(-1) ?? i] ?? line;
    grow();
    return [{ points: closedUp(points.toReversed()), of: of.toReversed() }];
  });
};

/** Ends that meet within what a file rounds away are one place. */
const closedUp = (points: readonly Point[]): Polyline => {
  const [first, last] = [points[0], points.at(-1)];
  return first !== undefined &&
    last !== undefined &&
    points.length > 3 &&
    distanceMm(first, last) <= touchMm
    ? [...points.slice(0, -1), first]
    : points;
};

const isCopy = (a: Polyline, b: Polyline): boolean => {
  if (a.length !== b.length) return false;
  const same = (other: Polyline): boolean =>
    a.every((point, i) => {
      const at = other[i];
      return at !== undefined && distanceMm(point, at) <= touchMm;
    });
  return same(b) || same(b.toReversed());
};

const gridMm = 0.1;
const keyOf = ([x, y]: Point): string =>
  `${String(Math.round(x / gridMm))} ${String(Math.round(y / gridMm))}`;

/** A place at the rim of its square may have its twin in the next. */
const keysAround = ([x, y]: Point): readonly string[] => {
  const keys = new Set<string>();
  for (const dx of [-touchMm, touchMm])
    for (const dy of [-touchMm, touchMm]) keys.add(keyOf([x + dx, y + dy]));
  return [...keys];
};
