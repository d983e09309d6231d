import type { LengthUnit } from './length.ts';
import type { PressureUnit } from './pressure.ts';
import type { SpeedUnit } from './speed.ts';
import type { TemperatureUnit } from './temperature.ts';

/** The units in which a person reads and, unless they say otherwise, types. Everything is stored in mm, mm/s, kPa, °C. */
export interface UnitPreference {
  readonly length: LengthUnit;
  readonly speed: SpeedUnit;
  readonly pressure: PressureUnit;
  readonly temperature: TemperatureUnit;
}

export const metricUnits: UnitPreference = {
  length: 'mm',
  speed: 'mm/s',
  pressure: 'kPa',
  temperature: '°C',
};
export const inchUnits: UnitPreference = {
  length: 'in',
  speed: 'in/min',
  pressure: 'psi',
  temperature: '°F',
};
