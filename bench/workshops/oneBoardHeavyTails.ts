import { workshopWith } from './make.ts';

/** One board, on which a shape in a while is far off the rest. */
export const { name, openWorkshop, flawRate, oneBoard } = workshopWith(
  'one-board-heavy-tails',
  () => ({ link: 'student3' }),
  { oneBoard: true },
);
