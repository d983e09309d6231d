import { arcPoints } from '../../path/arc.ts';
import { chordTolerance, unitOutline, type UnitShape } from './unitShape.ts';

const tolerance = chordTolerance * 10;

/** A hook with a barb: two bends, a wide and a narrow one, and three corners sharper than a right angle. */
export const hook: UnitShape = {
  flatters: false,
  outline: unitOutline([
    [5, 6],
    ...arcPoints({ centre: [0, 0], radiusMm: 5, fromRad: 0, turnRad: -Math.PI }, tolerance),
    [-5, 4.2],
    [-0.4, 1.5],
    ...arcPoints({ centre: [0, 0], radiusMm: 2.2, fromRad: Math.PI, turnRad: Math.PI }, tolerance),
    [2.2, 6],
    [3.6, 4.4],
  ]),
};
