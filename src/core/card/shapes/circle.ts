import { arcPoints } from '../../path/arc.ts';
import { chordTolerance, unitOutline, type UnitShape } from './unitShape.ts';

/** A plain circle. It flatters the machine: the head never slows, and real work has corners (common practice, no source). */
export const circle: UnitShape = {
  flatters: true,
  outline: unitOutline(
    arcPoints(
      { centre: [0, 0], radiusMm: 0.5, fromRad: Math.PI / 2, turnRad: 2 * Math.PI },
      chordTolerance,
    ).slice(0, -1),
  ),
};
