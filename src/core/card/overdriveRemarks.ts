import { powerLimit, type PoweredMachine } from '../tube/deliveredPower.ts';
import type { Setting } from '../machine/setting.ts';
import type { CardProblem } from './cardProblem.ts';
import { overdrives } from './firingLimits.ts';

/** Says of each power setting that drives the tube above its rated current that it does. */
export const overdriveRemarks = (
  settings: readonly Setting[],
  machine: PoweredMachine,
): readonly CardProblem[] => {
  const over = settings.filter((setting) => overdrives(machine, setting));
  const ratedPct = Number(powerLimit(machine).powerPct.toFixed(1));
  return [...new Set(over.map((setting) => setting.powerPct))].map((powerPct) => ({
    code: 'card-rung-overdrives',
    params: { powerPct, ratedPct },
  }));
};
