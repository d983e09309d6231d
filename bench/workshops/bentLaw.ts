import { workshopWith } from './make.ts';

/** The law bends as the power nears the setting at which the tube begins to fire. */
export const { name, openWorkshop, flawRate } = workshopWith('bent-near-firing', () => ({
  firingPct: 10,
}));
