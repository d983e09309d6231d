import type { Point } from './point.ts';

/**
 * How many chords of equal parameter keep within a tolerance of a Bézier curve of any degree d:
 * n² = d·(d−1)·|greatest second difference of the controls| / (8·tolerance), the bound of the second derivative.
 */
export const chordsOfBezier = (controls: readonly Point[], toleranceMm: number): number => {
  const degree = controls.length - 1;
  let bend = 0;
  for (let i = 0; i + 2 < controls.length; i += 1) {
    const [p, q, r] = [controls[i], controls[i + 1], controls[i + 2]];
    if (p === undefined || q === undefined || r === undefined) continue;
    bend = Math.max(bend, Math.hypot(p[0] - 2 * q[0] + r[0], p[1] - 2 * q[1] + r[1]));
  }
  return Math.max(1, Math.ceil(Math.sqrt((degree * (degree - 1) * bend) / (8 * toleranceMm))));
};

/**
 * A place on a Bézier curve of any degree, by the linear-time algorithm of Woźny and Chudy ("Linear-time geometric
 * algorithm for evaluating Bézier curves", Computer-Aided Design 118, 2020): each step leans the place so far towards
 * the next control, so that it never leaves their hull. O(degree).
 */
export const pointOnBezier = (controls: readonly Point[], t: number): Point => {
  const degree = controls.length - 1;
  let [x, y] = controls[0] ?? [0, 0];
  let share = 1;
  for (let k = 1; k <= degree; k += 1) {
    const [cx, cy] = controls[k] ?? [x, y];
    const towards = t * (degree - k + 1) * share;
    share = towards === 0 ? 0 : towards / (k * (1 - t) + towards);
    x = (1 - share) * x + share * cx;
    y = (1 - share) * y + share * cy;
  }
  return [x, y];
};
