import { workshopWith } from './make.ts';

/** Three grades in a hundred are noted wrongly. */
export const { name, openWorkshop, flawRate } = workshopWith('misread-cells', () => ({
  misreadShare: 0.03,
}));
