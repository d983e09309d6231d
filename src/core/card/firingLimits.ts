import { omit } from '../omit.ts';
import { powerLimit, type PoweredMachine } from '../tube/deliveredPower.ts';
import type { Machine } from '../machine/machine.ts';
import { cornerPowerPct, type Setting } from '../machine/setting.ts';
import { stepNotSlower } from '../machine/speedSteps.ts';
import { problemOf, type ProblemOf } from '../problem.ts';
import type { BelievedChangeover } from './cardRequest.ts';
import type { FiringCode, FiringPart } from '../problems/firing.ts';
import { energyCeiling, energyRatio, slowestAllowed } from './ceiling.ts';

/**
 * What a setting is for. `through`: it is meant to come through, or may: cells, window, outline. `marks`: it is drawn on the
 * sheet and must not come through: words, notches, lines of a ramp.
 */
export type FiresTo = 'through' | 'marks';

/**
 * Marks keep to this share of the line energy of the believed changeover: a changeover that is known to a factor 2 lies four
 * times as fast one time in forty.
 */
export const marksCeiling = 0.25;

/** Less where the changeover is known worse than that: as much as it may lie faster one time in forty. */
export const marksCeilingAt = (powerPct: number, believed: BelievedChangeover): number =>
  Math.min(marksCeiling, Math.exp(-2 * believed(powerPct).lnSd));

/** What everything that fires is held to, whatever asks for it. */
export interface FiringLimits {
  readonly machine: PoweredMachine & Pick<Machine, 'speedRangeMmPerS'>;
  /** Absent: nothing is believed of the sheet, and line energy is not held. */
  readonly believed?: BelievedChangeover;
  /** So many times the line energy of the believed changeover are borne by what comes through; absent: {@link energyCeiling}. */
  readonly ceilingTimes?: number;
  /** A person named the overdrive: cells may go above rated current. */
  readonly mayOverdrive?: boolean;
}

/** A limit that a setting goes beyond, with its figures, rounded for sentences. */
export type BeyondLimit =
  | { readonly limit: 'machine'; readonly powerPct: number; readonly most: number }
  | { readonly limit: 'rated-current'; readonly powerPct: number; readonly ratedPct: number }
  | {
      readonly limit: 'speed';
      readonly speedMmPerS: number;
      readonly least: number;
      readonly most: number;
    }
  | {
      readonly limit: 'energy' | 'would-cut';
      /** Its line energy in those of the believed changeover. */
      readonly times: number;
      /** The slowest speed at this power that keeps to the limit. */
      readonly slowestMmPerS: number;
    };

/** A speed or energy that was rounded when it was written down is not beyond. */
const rounding = 1e-3;

/** Every limit that a setting goes beyond: machine, tube, and the line energy that the sheet bears. Power in corners counts too. */
export const beyondLimits = (
  setting: Setting,
  to: FiresTo,
  { machine, believed, ceilingTimes = energyCeiling }: Omit<FiringLimits, 'mayOverdrive'>,
): readonly BeyondLimit[] => {
  const powerPct = mostPowerPct(setting);
  const { speedMmPerS, passes } = setting;
  const [least, most] = machine.speedRangeMmPerS;
  const limit = powerLimit(machine);
  const ceiling =
    to === 'through'
      ? ceilingTimes
      : believed === undefined
        ? marksCeiling
        : marksCeilingAt(powerPct, believed);
  const ratio = believed === undefined ? 0 : energyRatio({ ...setting, powerPct }, believed);
  return [
    ...(powerPct > machine.maxPowerPct
      ? [{ limit: 'machine' as const, powerPct, most: machine.maxPowerPct }]
      : limit.because === 'rated-current' && powerPct > limit.powerPct + rounding
        ? [{ limit: 'rated-current' as const, powerPct, ratedPct: rounded(limit.powerPct) }]
        : []),
    ...(speedMmPerS < least * (1 - rounding) || speedMmPerS > most * (1 + rounding)
      ? [{ limit: 'speed' as const, speedMmPerS, least, most }]
      : []),
    ...(believed !== undefined && ratio > ceiling * (1 + rounding)
      ? [
          {
            limit: to === 'marks' ? ('would-cut' as const) : ('energy' as const),
            times: Number(ratio.toPrecision(2)),
            slowestMmPerS: stepNotSlower(slowestAllowed(powerPct, passes, believed, ceiling)),
          },
        ]
      : []),
  ];
};

/** Whether a setting drives the tube above its rated current, as far as that is known. */
export const overdrives = (machine: PoweredMachine, setting: Setting): boolean => {
  const { because, powerPct } = powerLimit(machine);
  return because === 'rated-current' && mostPowerPct(setting) > powerPct + rounding;
};

const mostPowerPct = (setting: Setting): number =>
  Math.max(setting.powerPct, cornerPowerPct(setting));

/** The first limit that a part of a job goes beyond, as a refusal; undefined where it keeps to all of them. */
export const firingProblem = (
  part: FiringPart,
  setting: Setting,
  limits: FiringLimits,
): ProblemOf<FiringCode> | undefined => {
  const to = part === 'marks' || part === 'line' ? 'marks' : 'through';
  const chosen = (part === 'cell' || part === 'setting') && limits.mayOverdrive === true;
  const first = beyondLimits(setting, to, limits).find(
    ({ limit }) => !(chosen && limit === 'rated-current'),
  );
  return first === undefined ? undefined : asProblem(part, setting, first);
};

const asProblem = (
  part: FiringPart,
  { powerPct }: Setting,
  beyond: BeyondLimit,
): ProblemOf<FiringCode> => {
  switch (beyond.limit) {
    case 'machine':
      return problemOf('fires-above-machine', { part, ...omit(beyond, 'limit') });
    case 'rated-current':
      return problemOf('fires-above-rated', { part, ...omit(beyond, 'limit') });
    case 'speed':
      return problemOf('fires-beyond-speeds', { part, powerPct, ...omit(beyond, 'limit') });
    case 'energy':
      return problemOf('fires-above-ceiling', { part, powerPct, ...omit(beyond, 'limit') });
    case 'would-cut':
      return problemOf('fires-would-cut', { part, powerPct, ...omit(beyond, 'limit') });
  }
};

const rounded = (value: number): number => Number(value.toFixed(1));
