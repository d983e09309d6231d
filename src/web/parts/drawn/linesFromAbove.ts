import type { CardDrawing } from '../../../core/card/cardDrawing.ts';

/** Lines of a drawing, whose y goes up, as the path of a picture, whose y goes down; in mm, from the upper edge. */
export const linesFromAbove = (
  polylines: CardDrawing['layers'][number]['polylines'],
  heightMm: number,
): string =>
  polylines
    .map(
      (line) =>
        `M${line.map(([x, y]) => `${x.toFixed(2)} ${(heightMm - y).toFixed(2)}`).join('L')}`,
    )
    .join('');
