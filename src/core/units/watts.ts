import type { Outcome } from '../problem.ts';
import { parseQuantity, showQuantity, type Units } from './quantity.ts';

const wattUnits: Units<'W'> = {
  kind: 'strength',
  factor: { W: 1 },
  spellings: { watt: 'W', watts: 'W' },
};

/** What a tube is sold as, as people write it ("60 W", "60"), in W. */
export const parseWatts = (text: string): Outcome<number> => parseQuantity(wattUnits, text, 'W');

/** The same to a whole W. */
export const showWatts = (watts: number): string => showQuantity(wattUnits, watts, 'W', 0);
