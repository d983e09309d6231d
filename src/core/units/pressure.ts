import type { Outcome } from '../problem.ts';
import { parseQuantity, showQuantity, type Units } from './quantity.ts';

export type PressureUnit = 'kPa' | 'bar' | 'psi' | 'MPa' | 'mbar' | 'Pa' | 'kgf/cm2';

/** psi: 6.894757 kPa, NIST SP 811 (2008), appendix B. kgf/cm²: 98.0665 kPa exactly, same place. bar: 100 kPa exactly. */
export const pressureUnits: Units<PressureUnit> = {
  kind: 'pressure',
  factor: { kPa: 1, bar: 100, psi: 6.894757, MPa: 1000, mbar: 0.1, Pa: 0.001, 'kgf/cm2': 98.0665 },
  spellings: {
    psig: 'psi',
    'lb/in2': 'psi',
    'lbf/in2': 'psi',
    bars: 'bar',
    hpa: 'mbar',
    'kgf/cm²': 'kgf/cm2',
    'kg/cm2': 'kgf/cm2',
    'kg/cm²': 'kgf/cm2',
  },
};

/** A gauge pressure as people write it ("20 psi", "1.4 bar", "100 kPa"), in kPa. */
export const parsePressure = (text: string, defaultUnit: PressureUnit = 'kPa'): Outcome<number> =>
  parseQuantity(pressureUnits, text, defaultUnit);

const decimals: Readonly<Record<PressureUnit, number>> = {
  kPa: 0,
  bar: 2,
  psi: 1,
  MPa: 3,
  mbar: 0,
  Pa: 0,
  'kgf/cm2': 2,
};

/** A pressure in kPa, as preferred. */
export const showPressure = (kPa: number, unit: PressureUnit = 'kPa'): string =>
  showQuantity(pressureUnits, kPa, unit, decimals[unit]);
