import { workshopWith } from './make.ts';

/** The plain case: speed follows a power of the setting, scatter is normal. */
export const { name, openWorkshop, flawRate } = workshopWith('power-law', () => ({}));
