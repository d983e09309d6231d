import { workshopWith } from './make.ts';

/** One shape in a while is far off the rest. */
export const { name, openWorkshop, flawRate } = workshopWith('heavy-tails', () => ({
  link: 'student3',
}));
