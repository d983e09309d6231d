import type { Point } from '../path/point.ts';
import type { Mask } from './masks.ts';
import { rimLines, type Side } from './rimLines.ts';

/** Four corners in a picture, in turn. */
export type Quad = readonly [Point, Point, Point, Point];

interface Size {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** A four-sided figure seen in a mask, and which share of its sides the mask's own edge follows. */
export interface QuadSeen {
  readonly quad: Quad;
  readonly support: number;
}

/** Smaller than this share of the picture no card is looked for. */
const leastShare = 0.015;

/** The four-sided figures that the larger patches of a mask fill, even where something lies over a corner. */
export const quadsIn = (mask: Mask, size: Size): readonly QuadSeen[] =>
  patchesOf(mask, size).flatMap((patch) => quadsAround(patch, size));

/** Pixels of each patch that touches itself, the three largest. */
const patchesOf = (mask: Mask, { widthPx, heightPx }: Size): readonly Int32Array[] => {
  const seen = new Uint8Array(mask.length);
  const patches: Int32Array[] = [];
  const stack = new Int32Array(mask.length);
  const all = new Int32Array(mask.length);
  for (let start = 0; start < mask.length; start += 1) {
    if (mask[start] !== 1 || seen[start] === 1) continue;
    let [top, count] = [0, 0];
    stack[top++] = start;
    seen[start] = 1;
    while (top > 0) {
      const k = stack[--top] ?? NaN;
      all[count++] = k;
      const x = k % widthPx;
      const visit = (next: number): void => {
        if (mask[next] !== 1 || seen[next] === 1) return;
        seen[next] = 1;
        stack[top++] = next;
      };
      if (x > 0) visit(k - 1);
      if (x + 1 < widthPx) visit(k + 1);
      if (k >= widthPx) visit(k - widthPx);
      if (k + widthPx < mask.length) visit(k + widthPx);
    }
    const share = count / (widthPx * heightPx);
    if (share > leastShare && share < 0.95) patches.push(all.slice(0, count));
  }
  return patches.sort((a, b) => b.length - a.length).slice(0, 3);
};

/** Sides that follow the rim this well need no other look. */
const wellFollowed = 0.93;

const quadsAround = (patch: Int32Array, size: Size): readonly QuadSeen[] => {
  const rim = rimOf(patch, size);
  const near = nearRim(rim, size);
  const strays = 0.012 * Math.hypot(size.widthPx, size.heightPx);
  const byHull = quadsOf(longSides(hullOf(rim), strays), near, size);
  const isClear = byHull.some(({ support }) => support > wellFollowed);
  return [...byHull, ...(isClear ? [] : quadsOf(rimLines(rim), near, size))]
    .sort((a, b) => b.support - a.support)
    .slice(0, 2);
};

const quadsOf = (sides: readonly Side[], near: Uint8Array, size: Size): readonly QuadSeen[] =>
  foursOf(sides.length).flatMap((four) => {
    const quad = quadOf(four.map((i) => sides[i]).filter((side) => side !== undefined));
    return quad === undefined || areaOf(quad) < leastShare * size.widthPx * size.heightPx
      ? []
      : [{ quad, support: supportOf(quad, near, size) }];
  });

/** The outermost pixels of a patch in each row and column. */
const rimOf = (patch: Int32Array, { widthPx, heightPx }: Size): readonly Point[] => {
  const [left, right] = [new Int32Array(heightPx).fill(widthPx), new Int32Array(heightPx).fill(-1)];
  const [top, bottom] = [new Int32Array(widthPx).fill(heightPx), new Int32Array(widthPx).fill(-1)];
  for (const k of patch) {
    const [x, y] = [k % widthPx, Math.floor(k / widthPx)];
    left[y] = Math.min(left[y] ?? NaN, x);
    right[y] = Math.max(right[y] ?? NaN, x);
    top[x] = Math.min(top[x] ?? NaN, y);
    bottom[x] = Math.max(bottom[x] ?? NaN, y);
  }
  const rim: Point[] = [];
  for (let y = 0; y < heightPx; y += 1)
    if ((right[y] ?? -1) >= 0)
      rim.push([left[y] ?? NaN, y + 0.5], [(right[y] ?? NaN) + 1, y + 0.5]);
  for (let x = 0; x < widthPx; x += 1)
    if ((bottom[x] ?? -1) >= 0)
      rim.push([x + 0.5, top[x] ?? NaN], [x + 0.5, (bottom[x] ?? NaN) + 1]);
  return rim;
};

/** The convex hull in turn (Andrew's monotone chain). */
const hullOf = (points: readonly Point[]): readonly Point[] => {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const chain = (from: readonly Point[]): readonly Point[] => {
    const kept: Point[] = [];
    for (const point of from) {
      while (
        kept.length > 1 &&
        turn(kept[kept.length - 2] ?? point, kept[kept.length - 1] ?? point, point) <= 0
      )
        kept.pop();
      kept.push(point);
    }
    return kept.slice(0, -1);
  };
  return [...chain(sorted), ...chain([...sorted].reverse())];
};

const turn = (a: Point, b: Point, c: Point): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

const mostSides = 9;

/** The hull with fewer corners: what strays less than `within` from a side counts to it. The longest, in turn. */
const longSides = (hull: readonly Point[], within: number): readonly Side[] => {
  const first = farthestFrom(hull, hull[0] ?? [0, 0]);
  const second = farthestFrom(hull, hull[first] ?? [0, 0]);
  const [low, high] = [Math.min(first, second), Math.max(first, second)];
  const corners = [
    ...fewer(hull.slice(low, high + 1), within).slice(0, -1),
    ...fewer([...hull.slice(high), ...hull.slice(0, low + 1)], within).slice(0, -1),
  ];
  const sides = corners.map((from, i): Side => ({
    from,
    to: corners[(i + 1) % corners.length] ?? from,
  }));
  const least = [...sides].sort((a, b) => lengthOf(b) - lengthOf(a))[mostSides - 1];
  return least === undefined ? sides : sides.filter((side) => lengthOf(side) >= lengthOf(least));
};

const lengthOf = ({ from, to }: Side): number => Math.hypot(to[0] - from[0], to[1] - from[1]);

const farthestFrom = (points: readonly Point[], from: Point): number =>
  points.reduce(
    (best, point, i) =>
      lengthOf({ from, to: point }) > lengthOf({ from, to: points[best] ?? from }) ? i : best,
    0,
  );

/** Douglas and Peucker. */
const fewer = (line: readonly Point[], within: number): readonly Point[] => {
  const [from, to] = [line[0], line.at(-1)];
  if (from === undefined || to === undefined || line.length < 3) return line;
  const length = lengthOf({ from, to }) || 1;
  let [far, at] = [0, 0];
  line.forEach((point, i) => {
    const off = Math.abs(turn(from, to, point)) / length;
    if (off > far) [far, at] = [off, i];
  });
  if (far <= within) return [from, to];
  return [...fewer(line.slice(0, at + 1), within).slice(0, -1), ...fewer(line.slice(at), within)];
};

/** Every choice of four of so many, in turn. */
const foursOf = (count: number): readonly (readonly number[])[] => {
  const fours: number[][] = [];
  for (let a = 0; a < count; a += 1)
    for (let b = a + 1; b < count; b += 1)
      for (let c = b + 1; c < count; c += 1)
        for (let d = c + 1; d < count; d += 1) fours.push([a, b, c, d]);
  return fours;
};

/** Where each side meets the next; undefined where they make no convex figure. */
const quadOf = (sides: readonly Side[]): Quad | undefined => {
  const corners = sides.map((side, i) => crossingOf(side, sides[(i + 1) % sides.length] ?? side));
  const [a, b, c, d] = corners;
  if (a === undefined || b === undefined || c === undefined || d === undefined) return undefined;
  const quad: Quad = [a, b, c, d];
  const turns = quad.map((point, i) =>
    turn(point, quad[(i + 1) % 4] ?? point, quad[(i + 2) % 4] ?? point),
  );
  return turns.every((one) => one > 0) || turns.every((one) => one < 0) ? quad : undefined;
};

export const crossingOf = (a: Side, b: Side): Point | undefined => {
  const [ux, uy] = [a.to[0] - a.from[0], a.to[1] - a.from[1]];
  const [vx, vy] = [b.to[0] - b.from[0], b.to[1] - b.from[1]];
  const across = ux * vy - uy * vx;
  // Sides that run nearly alike meet nowhere near the card.
  if (!(Math.abs(across) > 0.1 * Math.hypot(ux, uy) * Math.hypot(vx, vy))) return undefined;
  const t = ((b.from[0] - a.from[0]) * vy - (b.from[1] - a.from[1]) * vx) / across;
  return [a.from[0] + t * ux, a.from[1] + t * uy];
};

export const areaOf = (quad: Quad): number => Math.abs(signedAreaOf(quad));

/** Positive where it turns with the clock, on a picture whose y points down. The shoelace formula. */
export const signedAreaOf = (quad: Quad): number =>
  quad.reduce((sum, [x, y], i) => {
    const [x1, y1] = quad[(i + 1) % 4] ?? [x, y];
    return sum + x * y1 - x1 * y;
  }, 0) / 2;

const nearRim = (rim: readonly Point[], { widthPx, heightPx }: Size): Uint8Array => {
  const near = new Uint8Array(widthPx * heightPx);
  for (const [x, y] of rim)
    for (let j = Math.max(0, Math.floor(y) - 2); j <= Math.min(heightPx - 1, y + 2); j += 1)
      for (let i = Math.max(0, Math.floor(x) - 2); i <= Math.min(widthPx - 1, x + 2); i += 1)
        near[j * widthPx + i] = 1;
  return near;
};

const supportOf = (quad: Quad, near: Uint8Array, { widthPx, heightPx }: Size): number => {
  let [on, all] = [0, 0];
  quad.forEach(([x0, y0], i) => {
    const [x1, y1] = quad[(i + 1) % 4] ?? [x0, y0];
    const steps = Math.ceil(Math.hypot(x1 - x0, y1 - y0));
    for (let k = 0; k < steps; k += 1) {
      const [x, y] = [
        Math.floor(x0 + ((x1 - x0) * k) / steps),
        Math.floor(y0 + ((y1 - y0) * k) / steps),
      ];
      all += 1;
      if (x >= 0 && y >= 0 && x < widthPx && y < heightPx && near[y * widthPx + x] === 1) on += 1;
    }
  });
  return all === 0 ? 0 : on / all;
};
