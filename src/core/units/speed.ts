import type { Outcome } from '../problem.ts';
import { mmPerInch } from './length.ts';
import { parseQuantity, showQuantity, type Units } from './quantity.ts';

export type SpeedUnit = 'mm/s' | 'mm/min' | 'cm/s' | 'm/min' | 'm/s' | 'in/s' | 'in/min' | 'ft/min';

const lengths = {
  mm: ['mm'],
  cm: ['cm'],
  m: ['m'],
  in: ['in', 'inch', 'inches', '"', '\u2033'],
  ft: ['ft', 'feet'],
};
const times = {
  s: ['s', 'sec', 'secs', 'second', 'seconds'],
  min: ['min', 'mins', 'minute', 'minutes'],
};

/** Every way of writing one unit: `in/min`, `inch/minute`, `in per min`. */
const spelt = (length: keyof typeof lengths, time: keyof typeof times): readonly string[] =>
  lengths[length].flatMap((l) => times[time].flatMap((t) => [`${l}/${t}`, `${l}per${t}`]));

const spellingsOf = (
  unit: SpeedUnit,
  ways: readonly string[],
): readonly (readonly [string, SpeedUnit])[] => ways.map((way) => [way, unit]);

export const speedUnits: Units<SpeedUnit> = {
  kind: 'speed',
  factor: {
    'mm/s': 1,
    'mm/min': 1 / 60,
    'cm/s': 10,
    'm/min': 1000 / 60,
    'm/s': 1000,
    'in/s': mmPerInch,
    'in/min': mmPerInch / 60,
    'ft/min': (12 * mmPerInch) / 60,
  },
  spellings: Object.fromEntries([
    ...spellingsOf('mm/s', [...spelt('mm', 's'), 'mmps', 'mms']),
    ...spellingsOf('mm/min', [...spelt('mm', 'min'), 'mmpm']),
    ...spellingsOf('cm/s', spelt('cm', 's')),
    ...spellingsOf('m/min', spelt('m', 'min')),
    ...spellingsOf('m/s', spelt('m', 's')),
    ...spellingsOf('in/s', [...spelt('in', 's'), 'ips']),
    ...spellingsOf('in/min', [...spelt('in', 'min'), 'ipm']),
    ...spellingsOf('ft/min', [...spelt('ft', 'min'), 'fpm']),
  ]),
};

/** A speed as people write it ("600 in/min", "1.2 m/min", "15"), in mm/s. */
export const parseSpeed = (text: string, defaultUnit: SpeedUnit = 'mm/s'): Outcome<number> =>
  parseQuantity(speedUnits, text, defaultUnit);

const decimals: Readonly<Record<SpeedUnit, number>> = {
  'mm/s': 2,
  'mm/min': 0,
  'cm/s': 3,
  'm/min': 3,
  'm/s': 4,
  'in/s': 3,
  'in/min': 1,
  'ft/min': 2,
};

/** A speed in mm/s, as preferred. */
export const showSpeed = (speedMmPerS: number, unit: SpeedUnit = 'mm/s'): string =>
  showQuantity(speedUnits, speedMmPerS, unit, decimals[unit]);
