import type { Card, Cell } from './card.ts';

/** The cells as they are cut: rung by rung in the order of the letters, or mixed where the card says so. */
export const cellsInCuttingOrder = (card: Card): readonly Cell[] =>
  card.order === 'free'
    ? card.cells
    : card.rungs.flatMap(({ letter }) => card.cells.filter((cell) => cell.rung === letter));
