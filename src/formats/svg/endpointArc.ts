import type { EllipseArc } from '../../core/path/ellipseArc.ts';
import type { Point } from '../../core/path/point.ts';

interface EndpointArc {
  readonly from: Point;
  readonly to: Point;
  readonly radii: readonly [number, number];
  readonly turnDeg: number;
  readonly large: boolean;
  readonly sweep: boolean;
}

/**
 * An arc as path data give it, by its ends, as one about a centre (SVG 2, appendix B.2.4 and B.2.5): radii that are too
 * small grow until they reach. Undefined for a straight line or nothing.
 */
export const endpointArc = (task: EndpointArc): EllipseArc | undefined => {
  const { from, to, large, sweep } = task;
  let [rx, ry] = [Math.abs(task.radii[0]), Math.abs(task.radii[1])];
  const same = from[0] === to[0] && from[1] === to[1];
  if (same || rx === 0 || ry === 0) return undefined;
  const phi = (task.turnDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(phi), Math.sin(phi)];
  // Half the way back, along the axes of the ellipse, in units of its radii.
  const [hx, hy] = [(from[0] - to[0]) / 2, (from[1] - to[1]) / 2];
  let [ux, uy] = [(cos * hx + sin * hy) / rx, (cos * hy - sin * hx) / ry];
  const reach = Math.hypot(ux, uy);
  if (reach > 1) {
    [rx, ry] = [rx * reach, ry * reach];
    [ux, uy] = [ux / reach, uy / reach];
  }
  // On the unit circle the centre lies across the middle of the chord, at a right angle to it.
  const square = Math.min(1, ux * ux + uy * uy);
  const height = (large === sweep ? -1 : 1) * Math.sqrt((1 - square) / square);
  const [cx, cy] = [height * uy, -height * ux];
  const fromRad = Math.atan2(uy - cy, ux - cx);
  const toRad = Math.atan2(-uy - cy, -ux - cx);
  const axisA: Point = [rx * cos, rx * sin];
  const axisB: Point = [-ry * sin, ry * cos];
  return {
    centre: [
      (from[0] + to[0]) / 2 + axisA[0] * cx + axisB[0] * cy,
      (from[1] + to[1]) / 2 + axisA[1] * cx + axisB[1] * cy,
    ],
    axisA,
    axisB,
    fromRad,
    turnRad: turnBetween(fromRad, toRad, sweep),
  };
};

const turnBetween = (fromRad: number, toRad: number, sweep: boolean): number => {
  const full = 2 * Math.PI;
  const turn = (((toRad - fromRad) % full) + full) % full;
  return sweep ? turn : turn - full;
};
