import { workshopWith } from './make.ts';

/** The sheet grows 3 % thicker over 100 mm. */
export const { name, openWorkshop, flawRate } = workshopWith('wedge-sheet', () => ({
  wedgePer100Mm: 0.03,
}));
