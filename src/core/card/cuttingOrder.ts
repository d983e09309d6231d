import type { Card, Cell } from './card.ts';

/** The cells rung by rung in the order of the letters: how a drawing is cut, which has one layer a setting. */
export const cellsByRung = (card: Card): readonly Cell[] =>
  card.rungs.flatMap(({ letter }) => card.cells.filter((cell) => cell.rung === letter));

/** The cells as they are cut: rung by rung, or mixed where the card says so, which only a program carries. */
export const cellsInCuttingOrder = (card: Card): readonly Cell[] =>
  card.order === 'free' ? card.cells : cellsByRung(card);
