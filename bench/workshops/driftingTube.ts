import { workshopWith } from './make.ts';

/** The tube loses 6 % of speed while a card is cut. */
export const { name, openWorkshop, flawRate } = workshopWith('drifting-tube', () => ({
  driftOverCard: 0.06,
}));
