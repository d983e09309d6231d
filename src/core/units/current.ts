import type { Outcome } from '../problem.ts';
import { parseQuantity, showQuantity, type Units } from './quantity.ts';

export type CurrentUnit = 'mA' | 'A';

const currentUnits: Units<CurrentUnit> = {
  kind: 'current',
  factor: { mA: 1, A: 1000 },
  spellings: {
    milliamp: 'mA',
    milliamps: 'mA',
    milliampere: 'mA',
    milliamperes: 'mA',
    amp: 'A',
    amps: 'A',
  },
};

/** A tube current as people write it ("11 mA", "11"), in mA. */
export const parseCurrent = (text: string, defaultUnit: CurrentUnit = 'mA'): Outcome<number> =>
  parseQuantity(currentUnits, text, defaultUnit);

/** A tube current in mA, to 0.1 mA. */
export const showCurrent = (currentMa: number): string =>
  showQuantity(currentUnits, currentMa, 'mA', 1);
