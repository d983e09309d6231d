import { workshopWith } from './make.ts';

/** The beam weakens by 15 % across the bed. */
export const { name, openWorkshop, flawRate } = workshopWith('tilted-beam', () => ({
  tiltAcrossBed: 0.15,
}));
