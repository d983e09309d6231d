import type { Outcome } from '../problem.ts';
import { mmPerInch } from './length.ts';
import { parseQuantity, showQuantity, type Units } from './quantity.ts';

export type AccelerationUnit = 'mm/s²' | 'm/s²' | 'in/s²' | 'mm/min²' | 'g';

/** g: 9.80665 m/s² exactly, NIST SP 811 (2008), appendix B. */
const accelerationUnits: Units<AccelerationUnit> = {
  kind: 'acceleration',
  factor: {
    'mm/s²': 1,
    'm/s²': 1000,
    'in/s²': mmPerInch,
    'mm/min²': 1 / 3600,
    g: 9806.65,
  },
  spellings: {
    'mm/s2': 'mm/s²',
    'mm/s^2': 'mm/s²',
    'mm/s/s': 'mm/s²',
    'mm/sec2': 'mm/s²',
    'mm/sec^2': 'mm/s²',
    'm/s2': 'm/s²',
    'm/s^2': 'm/s²',
    'in/s2': 'in/s²',
    'in/s^2': 'in/s²',
    'mm/min2': 'mm/min²',
    'mm/min^2': 'mm/min²',
  },
};

/** An acceleration as people write it ("800", "0.8 m/s2", "0.1 g"), in mm/s². */
export const parseAcceleration = (
  text: string,
  defaultUnit: AccelerationUnit = 'mm/s²',
): Outcome<number> => parseQuantity(accelerationUnits, text, defaultUnit);

/** An acceleration in mm/s², to three digits: none is known closer. */
export const showAcceleration = (mmPerS2: number, unit: AccelerationUnit = 'mm/s²'): string =>
  showQuantity(accelerationUnits, Number(mmPerS2.toPrecision(3)), unit, unit === 'in/s²' ? 1 : 3);
