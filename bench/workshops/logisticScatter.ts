import { workshopWith } from './make.ts';

/** Scatter with somewhat heavier tails. */
export const { name, openWorkshop, flawRate } = workshopWith('logistic-scatter', () => ({
  link: 'logistic',
}));
