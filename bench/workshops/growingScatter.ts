import { workshopWith } from './make.ts';

/** Scatter grows with speed. */
export const { name, openWorkshop } = workshopWith('growing-scatter', () => ({ scatterGrowth: 1 }));
