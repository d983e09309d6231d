import { project, type Homography } from '../../src/num/homography.ts';
import type { Card } from '../../src/core/card/card.ts';
import type { CellSeen } from '../../src/core/photo/gradeCell.ts';
import { thresholdOf } from '../../src/core/photo/masks.ts';
import { planeAt, planesOf } from '../../src/core/photo/opponent.ts';
import type { Picture } from '../../src/core/photo/picture.ts';

/**
 * The plain way: one threshold of light over the whole picture (Otsu's), told which side of it the sheet is on by the
 * card's middle strip; a shape is out where its middle is on the other side. It is told where the card lies.
 */
export const peerGrades = (
  card: Card,
  picture: Picture,
  toPx: Homography | undefined,
): readonly CellSeen[] => {
  if (toPx === undefined) return [];
  const planes = planesOf(picture);
  const [light] = planes.channels;
  const over = thresholdOf(light);
  const isLight = (x: number, y: number): boolean => {
    const [u, v] = project(toPx, [x, y]);
    return planeAt(light, planes, u, v) > over;
  };
  const edge = Array.from({ length: 50 }, (_, i) => isLight((card.widthMm * (i + 0.5)) / 50, 1));
  const sheetIsLight = edge.filter(Boolean).length > edge.length / 2;
  return card.cells.map(({ id, xMm, yMm }) => ({
    cell: id,
    grade: isLight(xMm, yMm) === sheetIsLight ? 'stays' : 'out',
    sure: 0.5,
  }));
};
