import { distanceMm, type Point } from './point.ts';
import { isClosed, type Polyline } from './polyline.ts';

/** Ends nearer than this are one place, mm. */
const touchMm = 0.02;

/**
 * Open lines that touch end to end, put together: a shape that was saved as single strokes is whole again. Each entry
 * names the lines that it was made of, in the order in which it runs through them. Closed lines stay as they are, and no
 * line is joined to its own copy. O(n), heaps of copies and of lines from one place included.
 */
export const joinTouching = (
  lines: readonly Polyline[],
): readonly { readonly points: Polyline; readonly of: readonly number[] }[] => {
  const open = new Set<number>();
  /** By place, the lines that end there; copies of one line stand together, so that a heap of them is looked at once. */
  const ends = new Map<string, Map<string, Copies>>();
  lines.forEach((line, i) => {
    if (line.length < 2 || isClosed(line)) return;
    open.add(i);
    const same = copyKeyOf(line);
    for (const end of [line[0], line.at(-1)]) {
      if (end === undefined) continue;
      const place = ends.get(keyOf(end)) ?? new Map<string, Copies>();
      ends.set(keyOf(end), place);
      const copies = place.get(same);
      if (copies === undefined) place.set(same, { lines: [i], next: 0 });
      else copies.lines.push(i);
    }
  });
  const firstOpen = (copies: Copies): number | undefined => {
    while (copies.next < copies.lines.length && !open.has(copies.lines[copies.next] ?? -1))
      copies.next += 1;
    return copies.lines[copies.next];
  };
  /** An open line that begins or ends at a place, turned so that it begins there. */
  const nextAt = (at: Point, last: Polyline): { points: Polyline; i: number } | undefined => {
    for (const key of keysAround(at))
      for (const [same, copies] of ends.get(key) ?? []) {
        const i = firstOpen(copies);
        const line = i === undefined ? undefined : lines[i];
        if (i === undefined || line === undefined) {
          ends.get(key)?.delete(same);
          continue;
        }
        if (isCopy(line, last)) continue;
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

/** Lines that are copies of one another, in order; those before `next` are used up. */
interface Copies {
  readonly lines: number[];
  next: number;
}

/** Points of one square of this size lie nearer to one another than what touches. */
const copyGridMm = touchMm / 2;

/** The same for copies, whichever way they run. */
const copyKeyOf = (line: Polyline): string => {
  const places = line.map(
    ([x, y]) => `${String(Math.round(x / copyGridMm))} ${String(Math.round(y / copyGridMm))}`,
  );
  const [there, back] = [places.join(','), places.toReversed().join(',')];
  return there < back ? there : back;
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
