import { mapped, mappedWay, type Matrix } from './matrix.ts';
import type { Point } from './point.ts';

/**
 * Part of an ellipse: centre + cos t · axisA + sin t · axisB. The axes need not be at right angles, so that whatever an
 * affine map makes of a circle is one of these.
 */
export interface EllipseArc {
  readonly centre: Point;
  readonly axisA: Point;
  readonly axisB: Point;
  /** The parameter at the start, and how far it runs: positive from axis A towards axis B. */
  readonly fromRad: number;
  readonly turnRad: number;
}

export const circleArc = (
  centre: Point,
  radius: number,
  fromRad: number,
  turnRad: number,
): EllipseArc => ({ centre, axisA: [radius, 0], axisB: [0, radius], fromRad, turnRad });

export const mappedArc = (matrix: Matrix, arc: EllipseArc): EllipseArc => ({
  ...arc,
  centre: mapped(matrix, arc.centre),
  axisA: mappedWay(matrix, arc.axisA),
  axisB: mappedWay(matrix, arc.axisB),
});

export const pointOnArc = ({ centre, axisA, axisB }: EllipseArc, rad: number): Point => {
  const [cos, sin] = [Math.cos(rad), Math.sin(rad)];
  return [centre[0] + cos * axisA[0] + sin * axisB[0], centre[1] + cos * axisA[1] + sin * axisB[1]];
};

/** The longest radius: the greater singular value of the two axes side by side. */
export const longestRadius = ({ axisA, axisB }: EllipseArc): number => {
  const squares = axisA[0] ** 2 + axisA[1] ** 2 + axisB[0] ** 2 + axisB[1] ** 2;
  const area = axisA[0] * axisB[1] - axisA[1] * axisB[0];
  return Math.sqrt((squares + Math.sqrt(Math.max(0, squares ** 2 - 4 * area ** 2))) / 2);
};

/**
 * How many equal chords keep within a tolerance of the arc. A chord of angle θ strays from a circle of radius r by
 * r·(1 − cos(θ/2)) = 2r·sin²(θ/4), and from an ellipse by no more than from the circle of its longest radius.
 */
export const chordsOfArc = (arc: EllipseArc, toleranceMm: number): number => {
  const radius = Math.max(longestRadius(arc), toleranceMm);
  const step = 4 * Math.asin(Math.sqrt(toleranceMm / (2 * radius)));
  return Math.max(1, Math.ceil(Math.abs(arc.turnRad) / step));
};
