import type { Card } from '../../../core/card/card.ts';

/** A thumb's width, 44 CSS pixels at the usual size of text. */
const thumbRem = 2.75;

/**
 * The least width of a card on the screen, as CSS, such that neighbours in a row stand a thumb apart: a wider card is
 * pushed sideways rather than made smaller.
 */
export const leastBoardWidth = ({ cells, widthMm }: Pick<Card, 'cells' | 'widthMm'>): string => {
  const steps = cells.flatMap((a) =>
    cells.flatMap((b) => (b.yMm === a.yMm && b.xMm > a.xMm ? [b.xMm - a.xMm] : [])),
  );
  const stepMm = Math.min(widthMm, ...steps);
  return `${((widthMm / stepMm) * thumbRem).toFixed(2)}rem`;
};
