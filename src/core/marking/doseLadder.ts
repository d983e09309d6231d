import type { BelievedChangeover } from '../card/cardRequest.ts';
import { energyRatio, slowestAllowed } from '../card/ceiling.ts';
import { marksCeilingAt } from '../card/firingLimits.ts';
import type { Air } from '../machine/air.ts';
import type { Machine } from '../machine/machine.ts';
import { settingKey, type Setting } from '../machine/setting.ts';
import { stepNotFaster, stepNotSlower } from '../machine/speedSteps.ts';
import { leastSteadyPct, powerLimit } from '../tube/deliveredPower.ts';

/** What settings of one kind of mark are made on. */
export interface MarkMaking {
  readonly machine: Machine;
  readonly believed: BelievedChangeover;
  /** How many lines burn each place: 1 for a single line. */
  readonly linesOver: number;
  /** As fast as is wanted, mm/s; never faster than the machine goes. */
  readonly fastestMmPerS: number;
  readonly air?: Air;
}

/**
 * What a mark gets, as a share of the line energy at which the sheet is believed to come through; a place that several lines
 * burn gets as much of each.
 */
export const doseOf = (
  { powerPct, speedMmPerS, passes }: Setting,
  { believed, linesOver }: Pick<MarkMaking, 'believed' | 'linesOver'>,
): number => energyRatio({ powerPct, speedMmPerS, passes: passes * linesOver }, believed);

const powersOf = (machine: Machine): readonly [least: number, most: number] => {
  const most = Math.floor(powerLimit(machine).powerPct);
  return [Math.min(most, Math.ceil(leastSteadyPct(machine))), most];
};

const fastestOf = ({ machine, fastestMmPerS }: MarkMaking): number =>
  stepNotFaster(Math.min(machine.speedRangeMmPerS[1], fastestMmPerS));

/** The least and the most that a mark may get: a steady tube at the fastest, and what surely does not come through. */
export const doseReach = (making: MarkMaking): readonly [least: number, most: number] => {
  const [leastPct, mostPct] = powersOf(making.machine);
  const gentlest = { powerPct: leastPct, speedMmPerS: fastestOf(making), passes: 1 };
  const ceilings = [leastPct, mostPct].map((pct) => marksCeilingAt(pct, making.believed));
  return [doseOf(gentlest, making), Math.min(...ceilings)];
};

/**
 * The setting that gives a dose: as fast as may be, with the most power in whole per cent that this asks for; no more than the
 * dose, by the step of a speed at most. Undefined where even the least steady power at the fastest gives more.
 */
export const settingForDose = (dose: number, making: MarkMaking): Setting | undefined => {
  const { machine, believed, linesOver, air } = making;
  const [leastPct, mostPct] = powersOf(machine);
  const fastest = fastestOf(making);
  const speedAt = (pct: number): number => slowestAllowed(pct, linesOver, believed, dose);
  // Rounded when it was written down.
  const isReached = (pct: number): boolean => stepNotSlower(speedAt(pct)) <= fastest;
  if (leastPct <= 0 || !isReached(leastPct)) return undefined;
  let powerPct = leastPct;
  while (powerPct < mostPct && isReached(powerPct + 1)) powerPct += 1;
  const speedMmPerS = Math.max(machine.speedRangeMmPerS[0], stepNotSlower(speedAt(powerPct)));
  return { powerPct, speedMmPerS, passes: 1, ...(air === undefined ? {} : { air }) };
};

/** More than this much apart, the gentlest shows nothing. Common practice, no source. */
const widest = 20;

/**
 * Settings from gentle to strong, each stronger than the last by one factor; equal ones once. Fewer than three where machine
 * and sheet leave no room between a steady tube and a mark that may come through.
 */
export const doseLadder = (count: number, making: MarkMaking): readonly Setting[] => {
  const [reached, most] = doseReach(making);
  const least = Math.max(reached, most / widest);
  if (!(least < most)) return [];
  const settings = Array.from({ length: count }, (_, i) =>
    settingForDose(least * (most / least) ** (i / (count - 1)), making),
  );
  const seen = new Set<string>();
  return settings.flatMap((setting) => {
    if (setting === undefined || seen.has(settingKey(setting))) return [];
    seen.add(settingKey(setting));
    return [setting];
  });
};
