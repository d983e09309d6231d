import type { SplinePiece } from './nurbs.ts';
import { distanceMm, type Point } from './point.ts';

/** Halving stops here, whatever the weights: 65 536 chords a piece. */
const mostHalvings = 16;

/**
 * Points along a Bézier curve with weights, its start left out. It is halved until every control lies within the
 * tolerance of the chord: with weights above 0 the curve stays within the hull of its controls, so that no chord strays
 * further. `most` points at most, so that absurd weights cost no more than that.
 */
export const rationalPoints = (
  { controls, weights }: SplinePiece,
  toleranceMm: number,
  most: number,
): readonly Point[] => {
  const raised = controls.map(([x, y], i): Raised => {
    const w = weights?.[i] ?? 1;
    return [x * w, y * w, w];
  });
  const found: Point[] = [];
  const waiting: { readonly row: readonly Raised[]; readonly halved: number }[] = [
    { row: raised, halved: 0 },
  ];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const flat = next.row.map(lowered);
    const end = flat.at(-1);
    if (end === undefined || found.length > most) break;
    if (next.halved === mostHalvings || isFlat(flat, toleranceMm)) {
      found.push(end);
      continue;
    }
    const [first, second] = halves(next.row);
    waiting.push({ row: second, halved: next.halved + 1 }, { row: first, halved: next.halved + 1 });
  }
  return found;
};

type Raised = readonly [number, number, number];

const lowered = ([x, y, w]: Raised): Point => [x / w, y / w];

const halves = (row: readonly Raised[]): readonly [readonly Raised[], readonly Raised[]] => {
  const [first, second]: [Raised[], Raised[]] = [[], []];
  for (let left = row; ;) {
    const [start, end] = [left[0], left.at(-1)];
    if (start === undefined || end === undefined) break;
    first.push(start);
    second.unshift(end);
    left = left.slice(1).map((to, i): Raised => {
      const from = left[i] ?? to;
      return [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2, (from[2] + to[2]) / 2];
    });
  }
  return [first, second];
};

const isFlat = (controls: readonly Point[], toleranceMm: number): boolean => {
  const [start, end] = [controls[0], controls.at(-1)];
  if (start === undefined || end === undefined) return true;
  return controls.every((point) => awayFrom(point, start, end) <= toleranceMm);
};

/** From the chord as far as it reaches, not from the endless line through it. */
const awayFrom = (point: Point, start: Point, end: Point): number => {
  const [dx, dy] = [end[0] - start[0], end[1] - start[1]];
  const square = dx ** 2 + dy ** 2;
  const along = ((point[0] - start[0]) * dx + (point[1] - start[1]) * dy) / square;
  const t = square === 0 ? 0 : Math.max(0, Math.min(1, along));
  return distanceMm(point, [start[0] + t * dx, start[1] + t * dy]);
};
