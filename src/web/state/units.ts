import { inchUnits, metricUnits, type UnitPreference } from '../../core/units/unitPreference.ts';

const key = 'throughcut.units';

/** The units chosen at this screen. */
export const keptUnits = (): UnitPreference =>
  localStorage.getItem(key) === 'inch' ? inchUnits : metricUnits;

export const keepUnits = (units: UnitPreference): void => {
  localStorage.setItem(key, units.length === 'in' ? 'inch' : 'metric');
};
