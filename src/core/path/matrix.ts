import type { Point } from './point.ts';

/**
 * An affine map of the plane, x' = a·x + c·y + e and y' = b·x + d·y + f: the six figures in the order in which SVG
 * writes them.
 */
export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const unchanged: Matrix = [1, 0, 0, 1, 0, 0];

/** First the inner, then the outer. */
export const times = (outer: Matrix, inner: Matrix): Matrix => {
  const [a, b, c, d, e, f] = outer;
  const [p, q, r, s, t, u] = inner;
  return [
    a * p + c * q,
    b * p + d * q,
    a * r + c * s,
    b * r + d * s,
    a * t + c * u + e,
    b * t + d * u + f,
  ];
};

/** Where a place goes. */
export const mapped = ([a, b, c, d, e, f]: Matrix, [x, y]: Point): Point => [
  a * x + c * y + e,
  b * x + d * y + f,
];

/** Where a way from one place to another goes: as a place, but not shifted. */
export const mappedWay = ([a, b, c, d]: Matrix, [x, y]: Point): Point => [
  a * x + c * y,
  b * x + d * y,
];

export const shift = ([x, y]: Point): Matrix => [1, 0, 0, 1, x, y];

export const stretch = (x: number, y: number): Matrix => [x, 0, 0, y, 0, 0];

/** Turns about the origin: from the x axis towards the y axis. */
export const turn = (rad: number): Matrix => {
  const [cos, sin] = [Math.cos(rad), Math.sin(rad)];
  return [cos, sin, -sin, cos, 0, 0];
};
