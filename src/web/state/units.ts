import {
  metricUnits,
  unitChoiceNames,
  unitChoices,
  type UnitChoice,
  type UnitPreference,
} from '../../core/units/unitPreference.ts';
import { unitsShown } from '../../words/texts.ts';
import { browserShelf } from './browserShelf.ts';
import { keepOn } from './shelf.ts';

const key = 'throughcut.units';

/** What was kept before there were more than two choices. */
const earlier: Readonly<Record<string, UnitChoice>> = { inch: 'in/min', metric: 'mm/s' };

/** The units chosen at this screen. */
export const keptUnits = (): UnitPreference => {
  const kept = browserShelf.getItem(key) ?? '';
  const choice = unitChoiceNames.find((name) => name === (earlier[kept] ?? kept));
  return choice === undefined ? metricUnits : unitChoices[choice];
};

/** Which of the choices the page shows. */
export const chosenUnits = (): UnitChoice =>
  unitChoiceNames.find((name) => name === unitsShown().speed) ?? 'mm/s';

export const keepUnits = (choice: UnitChoice): void => {
  keepOn(browserShelf, key, choice);
};

/** The same for the address of a file that the server makes; undefined where it would say them anyway. */
export const unitsInAddress = (): UnitChoice | undefined => {
  const choice = chosenUnits();
  return choice === 'mm/s' ? undefined : choice;
};
