import type { Outcome } from '../problem.ts';
import { parseQuantity, showQuantity, type Units } from './quantity.ts';

export type LengthUnit = 'mm' | 'cm' | 'm' | 'in' | 'ft' | 'thou';

/** One inch in mm, exactly: international yard and pound agreement, 1959. */
export const mmPerInch = 25.4;

export const lengthUnits: Units<LengthUnit> = {
  kind: 'length',
  factor: { mm: 1, cm: 10, m: 1000, in: mmPerInch, ft: 12 * mmPerInch, thou: mmPerInch / 1000 },
  spellings: {
    millimetre: 'mm',
    millimetres: 'mm',
    millimeter: 'mm',
    millimeters: 'mm',
    inch: 'in',
    inches: 'in',
    '"': 'in',
    "''": 'in',
    '\u2033': 'in',
    '\u201d': 'in',
    mil: 'thou',
    mils: 'thou',
    foot: 'ft',
    feet: 'ft',
    "'": 'ft',
    '\u2032': 'ft',
    '\u2019': 'ft',
  },
};

/** A length as people write it ("1/8 in", "3,1 mm", `0.118"`), in mm. */
export const parseLength = (text: string, defaultUnit: LengthUnit = 'mm'): Outcome<number> =>
  parseQuantity(lengthUnits, text, defaultUnit);

const decimals: Readonly<Record<LengthUnit, number>> = {
  mm: 2,
  cm: 3,
  m: 3,
  in: 3,
  ft: 3,
  thou: 0,
};

/** A length in mm, as preferred: to 0.01 mm or 0.001 in. */
export const showLength = (lengthMm: number, unit: LengthUnit = 'mm'): string =>
  showQuantity(lengthUnits, lengthMm, unit, decimals[unit]);
