import { boxAround } from '../../path/box.ts';
import { closed, type Polyline } from '../../path/polyline.ts';

/**
 * A test shape, drawn once for every size: closed, simple, its longer side 1, the middle of its box at the origin, y up.
 * Curves are in chords fine enough for a cell of 40 mm (0.01 mm off at most).
 */
export interface UnitShape {
  readonly outline: Polyline;
  /** True where the head never slows, so that the shape comes out sooner than real work does. */
  readonly flatters: boolean;
}

/** The greatest distance of a chord from its curve, as a share of the longer side. */
export const chordTolerance = 0.01 / 40;

/** Closes a line and brings it to the unit that every shape is drawn in. */
export const unitOutline = (points: Polyline): Polyline => {
  const box = boxAround([points]);
  if (box === undefined) return [];
  const size = Math.max(box.rightMm - box.leftMm, box.topMm - box.bottomMm);
  const middleX = (box.leftMm + box.rightMm) / 2;
  const middleY = (box.bottomMm + box.topMm) / 2;
  return closed(points.map(([x, y]) => [(x - middleX) / size, (y - middleY) / size]));
};
