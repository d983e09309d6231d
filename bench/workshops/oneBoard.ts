import { workshopWith } from './make.ts';

/** All cards are cut from one board, and so is the order. */
export const { name, openWorkshop, flawRate, oneBoard } = workshopWith('one-board', () => ({}), {
  oneBoard: true,
});
