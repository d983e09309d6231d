import { workshopWith } from './make.ts';

/** Scatter grows with speed. */
export const { name, openWorkshop, flawRate } = workshopWith('growing-scatter', () => ({
  scatterGrowth: 1,
}));
