import { workshopWith } from './make.ts';

/** One shape in twenty meets a glue pocket. */
export const { name, openWorkshop, flawRate } = workshopWith('glue-pockets', () => ({
  flawShare: 0.05,
}));
