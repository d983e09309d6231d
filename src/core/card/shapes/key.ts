import { arcPoints } from '../../path/arc.ts';
import type { Point } from '../../path/point.ts';
import { chordTolerance, unitOutline, type UnitShape } from './unitShape.ts';

/** The bow, a round head that the shank leaves at 30° above and below its axis; then the bit, three teeth of their own depth. */
const bowRadius = 3.2;
const bow = arcPoints(
  { centre: [0, 0], radiusMm: bowRadius, fromRad: Math.PI / 6, turnRad: (5 * Math.PI) / 3 },
  chordTolerance * 10,
);
const shank: readonly Point[] = [
  [4.4, -1.6],
  [4.4, -3.4],
  [5.6, -3.4],
  [5.6, -1.6],
  [6.6, -1.6],
  [6.6, -2.8],
  [7.6, -2.8],
  [7.6, -1.6],
  [8.5, -1.6],
  [8.5, -3.8],
  [9.8, -3.8],
  [9.8, 0.4],
  [8.6, 1.6],
];

/** Laid on the diagonal, so that both axes of the machine work at once along the shank. */
const diagonal = Math.PI / 4;

/** A key: one long bend, then square reversals close together, as in the teeth of joints. */
export const key: UnitShape = {
  flatters: false,
  outline: unitOutline(
    [...bow, ...shank].map(([x, y]): Point => [
      x * Math.cos(diagonal) - y * Math.sin(diagonal),
      x * Math.sin(diagonal) + y * Math.cos(diagonal),
    ]),
  ),
};
