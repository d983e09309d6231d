import type { AccelerationUnit } from './acceleration.ts';
import type { LengthUnit } from './length.ts';
import type { PressureUnit } from './pressure.ts';
import type { SpeedUnit } from './speed.ts';
import type { TemperatureUnit } from './temperature.ts';

/** The units in which a person reads and, unless they say otherwise, types. Everything is stored in mm, mm/s, kPa, °C. */
export interface UnitPreference {
  readonly length: LengthUnit;
  readonly speed: SpeedUnit;
  readonly acceleration: AccelerationUnit;
  readonly pressure: PressureUnit;
  readonly temperature: TemperatureUnit;
}

export const metricUnits: UnitPreference = {
  length: 'mm',
  speed: 'mm/s',
  acceleration: 'mm/s²',
  pressure: 'kPa',
  temperature: '°C',
};
export const inchUnits: UnitPreference = {
  length: 'in',
  speed: 'in/min',
  acceleration: 'in/s²',
  pressure: 'psi',
  temperature: '°F',
};

/** What a person may choose, by the unit of speed that tells the choices apart. */
export const unitChoices = {
  'mm/s': metricUnits,
  'mm/min': { ...metricUnits, speed: 'mm/min' },
  'in/s': { ...inchUnits, speed: 'in/s' },
  'in/min': inchUnits,
} as const satisfies Readonly<Record<string, UnitPreference>>;
export type UnitChoice = keyof typeof unitChoices;
export const unitChoiceNames = [
  'mm/s',
  'mm/min',
  'in/s',
  'in/min',
] as const satisfies readonly UnitChoice[];
