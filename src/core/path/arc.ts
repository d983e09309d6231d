import type { Point } from './point.ts';

export interface Arc {
  readonly centre: Point;
  readonly radiusMm: number;
  /** Radians from the x axis, anticlockwise. */
  readonly fromRad: number;
  /** How far it turns: positive anticlockwise, negative clockwise. */
  readonly turnRad: number;
}

/**
 * Points along an arc, both ends included, such that no chord strays further than `toleranceMm` from it: a chord of
 * angle θ strays by r·(1 − cos(θ/2)). O(√(r/tolerance)) points.
 */
export const arcPoints = (arc: Arc, toleranceMm: number): readonly Point[] => {
  const { centre, radiusMm, fromRad, turnRad } = arc;
  const step = 2 * Math.acos(Math.max(0, 1 - toleranceMm / Math.max(radiusMm, toleranceMm)));
  const count = Math.max(1, Math.ceil(Math.abs(turnRad) / step));
  return Array.from({ length: count + 1 }, (_, i): Point => {
    const angle = fromRad + (turnRad * i) / count;
    return [centre[0] + radiusMm * Math.cos(angle), centre[1] + radiusMm * Math.sin(angle)];
  });
};
