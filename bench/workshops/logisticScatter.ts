import { workshopWith } from './make.ts';

/** Scatter with somewhat heavier tails. */
export const { name, openWorkshop } = workshopWith('logistic-scatter', () => ({
  link: 'logistic',
}));
