import { workshopWith } from './make.ts';

/** One board of a batch whose boards differ by 4 %. */
export const { name, openWorkshop, flawRate, oneBoard } = workshopWith(
  'one-board-of-many',
  () => ({ sheetSd: 0.04 }),
  { oneBoard: true },
);
