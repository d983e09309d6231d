import type { Point } from '../path/point.ts';
import { planeAt, type Planes } from './opponent.ts';
import { crossingOf, type Quad } from './quads.ts';
import type { Side } from './rimLines.ts';

const places = 90;

/**
 * The same four sides, each laid along the innermost clear step of colour that runs beside it: a thick card shows its side
 * and its shadow beyond, and its face is what is drawn. Null where a side has no such step.
 */
export const sharpenQuad = (planes: Planes, quad: Quad, reachPx: number): Quad | null => {
  const middle: Point = [
    quad.reduce((sum, [x]) => sum + x / 4, 0),
    quad.reduce((sum, [, y]) => sum + y / 4, 0),
  ];
  const sides = quad.map((from, i) =>
    sideAlong(planes, { from, to: quad[(i + 1) % 4] ?? from }, { middle, reachPx }),
  );
  const corners = sides.map((side, i) => {
    const before = sides[(i + 3) % 4];
    return side == null || before == null ? undefined : crossingOf(before, side);
  });
  const [a, b, c, d] = corners;
  return a === undefined || b === undefined || c === undefined || d === undefined
    ? null
    : [a, b, c, d];
};

const sideAlong = (
  planes: Planes,
  { from, to }: Side,
  { middle, reachPx }: { readonly middle: Point; readonly reachPx: number },
): Side | null => {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  let [nx, ny] = [(to[1] - from[1]) / length, (from[0] - to[0]) / length];
  // From inside outwards.
  if ((from[0] - middle[0]) * nx + (from[1] - middle[1]) * ny < 0) [nx, ny] = [-nx, -ny];
  const steps = 2 * reachPx + 1;
  const profiles = Array.from({ length: places }, (_, k) => {
    const t = 0.05 + (0.9 * (k + 0.5)) / places;
    const [x, y] = [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])];
    const step = new Float32Array(steps);
    for (let s = 0; s < steps; s += 1) {
      const off = s - reachPx;
      let sum = 0;
      for (const plane of planes.channels) {
        const inner = planeAt(plane, planes, x + nx * (off - 1.5), y + ny * (off - 1.5));
        const outer = planeAt(plane, planes, x + nx * (off + 1.5), y + ny * (off + 1.5));
        sum += (outer - inner) ** 2;
      }
      step[s] = Math.sqrt(sum);
    }
    return { t, step };
  });
  const offs = profiles.flatMap(({ t, step }) => {
    const off = innermost(step);
    return off === undefined ? [] : [{ t, off: off - reachPx }];
  });
  const line = lineThrough(offs);
  if (line === null) return null;
  const at = (t: number): Point => {
    const off = line.at(t);
    return [from[0] + t * (to[0] - from[0]) + nx * off, from[1] + t * (to[1] - from[1]) + ny * off];
  };
  return { from: at(0), to: at(1) };
};

/** The first peak from inside that is more than half as high as the highest, between its neighbours by a parabola. */
const innermost = (step: Float32Array): number | undefined => {
  const highest = step.reduce((most, value) => (value > most ? value : most), 0);
  if (!(highest > 0.05)) return undefined;
  for (let s = 1; s + 1 < step.length; s += 1) {
    const [a, b, c] = [step[s - 1] ?? NaN, step[s] ?? NaN, step[s + 1] ?? NaN];
    if (b >= 0.5 * highest && b >= a && b > c) return s + (0.5 * (a - c)) / (a - 2 * b + c || -1);
  }
  return undefined;
};

interface Off {
  readonly t: number;
  readonly off: number;
}

const agreePx = 1.5;

/** The line that most agree on, then the least squares of those. */
const lineThrough = (offs: readonly Off[]): { readonly at: (t: number) => number } | null => {
  if (offs.length < places / 4) return null;
  let best: readonly Off[] = [];
  for (let i = 0; i < offs.length; i += 2)
    for (let j = i + Math.floor(offs.length / 3); j < offs.length; j += 3) {
      const [a, b] = [offs[i], offs[j]];
      if (a === undefined || b === undefined) continue;
      const slope = (b.off - a.off) / (b.t - a.t);
      const agree = offs.filter(
        ({ t, off }) => Math.abs(a.off + slope * (t - a.t) - off) < agreePx,
      );
      if (agree.length > best.length) best = agree;
    }
  if (best.length < offs.length / 4) return null;
  const mean = (of: (one: Off) => number): number =>
    best.reduce((sum, one) => sum + of(one), 0) / best.length;
  const [t0, off0] = [mean(({ t }) => t), mean(({ off }) => off)];
  const slope =
    mean(({ t, off }) => (t - t0) * (off - off0)) / (mean(({ t }) => (t - t0) ** 2) || 1);
  return { at: (t) => off0 + slope * (t - t0) };
};
