import { workshopWith } from './make.ts';

/** Sheets of one batch differ by 4 %. */
export const { name, openWorkshop, flawRate } = workshopWith('sheet-shifts', () => ({
  sheetSd: 0.04,
}));
