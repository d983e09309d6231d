import { inchUnits, metricUnits, type UnitPreference } from '../../core/units/unitPreference.ts';
import { browserShelf } from './browserShelf.ts';
import { keepOn } from './shelf.ts';

const key = 'throughcut.units';

/** The units chosen at this screen. */
export const keptUnits = (): UnitPreference =>
  browserShelf.getItem(key) === 'inch' ? inchUnits : metricUnits;

export const keepUnits = (units: UnitPreference): void => {
  keepOn(browserShelf, key, units.length === 'in' ? 'inch' : 'metric');
};
