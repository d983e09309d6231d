import { unitChoices, type UnitChoice, type UnitPreference } from '../core/units/unitPreference.ts';

/** The units in which a page is to speak, where somebody asked for others than mm and mm/s. */
export const unitsAsked = ({
  units,
}: {
  readonly units?: UnitChoice;
}): { readonly units?: UnitPreference } =>
  units === undefined ? {} : { units: unitChoices[units] };
