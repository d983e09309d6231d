import { done, refused, type Outcome } from '../problem.ts';
import type { TubePoint } from '../machine/machine.ts';
import { firingBracket, litSettings, meterSettings, type MeterSetting } from './meterSettings.ts';

/** Why a setting is on the list. */
export type MeterWhy = 'look' | 'threshold' | 'bend' | 'span' | 'rated';

/** One setting to fire at. */
export interface MeterStep {
  readonly powerPct: number;
  /** Absent once it was read. */
  readonly why?: MeterWhy;
  /** Readings there are, and readings wanted. */
  readonly have: number;
  readonly wanted: number;
  /** What the readings so far lead one to expect, mA; absent where they do not tell. */
  readonly expectedMa?: number;
}

/** What to fire next, in this order; and all that was fired. */
export interface MeterPlan {
  /** Ascending: everything read so far and everything that is still wanted. */
  readonly steps: readonly MeterStep[];
  /** Nothing is wanted any more. */
  readonly complete: boolean;
}

export interface MeterPlanRequest {
  readonly ratedCurrentMa?: number;
  readonly maxPowerPct: number;
  readonly readings: readonly TubePoint[];
}

/** The first look: low settings only, since nobody knows yet what this machine draws. */
const firstLook = [5, 10, 15, 20, 30] as const;
/** The firing threshold is looked for until it is known to this many points of setting. */
const thresholdWithinPct = 2;
/** Close enough to rated current to stop there. */
const nearRated = 0.98;
/** Between two settings a curve may bend unseen, and a step up into the unknown is no longer than this, in points. */
export const widestGapPct = 12;
const wanted = 2;

/**
 * Which settings to fire, and how often: few, close together where the curve bends (just above the firing threshold,
 * and towards rated current), each twice. It goes up from below and looks no further than the readings so far allow, so
 * that it is asked again after each reading. Refuses without a rated current (`meter-plan-needs-rating`): nobody would
 * know where to stop.
 */
export const meterPlan = ({
  ratedCurrentMa,
  maxPowerPct,
  readings,
}: MeterPlanRequest): Outcome<MeterPlan> => {
  if (ratedCurrentMa === undefined) return refused('meter-plan-needs-rating');
  const settings = meterSettings(readings);
  const next = nextSettings(settings, ratedCurrentMa).filter(
    ({ powerPct }) => powerPct <= maxPowerPct,
  );
  const fresh = next.filter(({ powerPct }) => !settings.some((one) => one.powerPct === powerPct));
  const steps = [
    ...settings.map((setting): MeterStep => ({
      powerPct: setting.powerPct,
      have: setting.readingsMa.length,
      wanted: wantedAt(setting, ratedCurrentMa),
      ...(setting.state === 'dark' ? {} : { expectedMa: setting.meanMa }),
    })),
    ...fresh.map(({ powerPct, why }): MeterStep => {
      const expectedMa = expectedAt(settings, powerPct);
      return {
        powerPct,
        why,
        have: 0,
        wanted,
        ...(expectedMa === null ? {} : { expectedMa }),
      };
    }),
  ].sort((a, b) => a.powerPct - b.powerPct);
  return done({
    steps,
    complete: steps.length > 0 && steps.every((step) => step.have >= step.wanted),
  });
};

/** Nothing is gained where the tube stays dark, and it is not driven above its rating twice. */
const wantedAt = ({ state, meanMa }: MeterSetting, ratedMa: number): number =>
  state === 'dark' || meanMa > ratedMa ? 1 : wanted;

interface Wish {
  readonly powerPct: number;
  readonly why: MeterWhy;
}

const nextSettings = (settings: readonly MeterSetting[], ratedMa: number): readonly Wish[] => {
  const lit = litSettings(settings);
  const [first] = lit;
  if (first === undefined) return [...firstLook.map(look), ...further(settings)];
  return lit.length < 2
    ? afterFirstLit(settings, first, ratedMa)
    : [...thresholdWish(settings), ...afterFirstLook(settings, lit, ratedMa)];
};

const look = (powerPct: number): Wish => ({ powerPct, why: 'look' });

/**
 * Lit at one setting only: what was to be looked at below it, and above it what is bearable even where the current rises as steeply
 * as it can have done from the last setting that was dark. Where none of that is left, one more as far up as that allows.
 */
const afterFirstLit = (
  settings: readonly MeterSetting[],
  { powerPct: firesAtPct, meanMa }: MeterSetting,
  ratedMa: number,
): readonly Wish[] => {
  const darkAtPct = firingBracket(settings)?.darkAtPct ?? 0;
  const reachPct = ((ratedMa - meanMa) * (firesAtPct - darkAtPct)) / meanMa;
  const open = firstLook.filter(
    (powerPct) =>
      powerPct <= firesAtPct + reachPct &&
      !settings.some((setting) => setting.powerPct === powerPct),
  );
  if (open.length > 0) return open.map(look);
  const below = thresholdWish(settings);
  if (below.length > 0) return below;
  const powerPct = Math.floor(firesAtPct + Math.min(reachPct, 2));
  return powerPct > firesAtPct ? [look(Math.min(100, powerPct))] : [];
};

/** What was asked for at first stays asked for while it is bearable: a list does not lose its lines under a hand. */
const afterFirstLook = (
  settings: readonly MeterSetting[],
  lit: readonly MeterSetting[],
  ratedMa: number,
): readonly Wish[] => {
  const open = firstLook.filter(
    (powerPct) =>
      powerPct > (lit[0]?.powerPct ?? 0) &&
      !settings.some((setting) => setting.powerPct === powerPct) &&
      (expectedAt(settings, powerPct) ?? Infinity) <= ratedMa,
  );
  return open.length > 0 ? open.map(look) : towardsRated(lit, ratedMa);
};

/** After a first look that found it dark: on upwards. */
const further = (settings: readonly MeterSetting[]): readonly Wish[] => {
  const most = settings.at(-1)?.powerPct ?? 0;
  return most < (firstLook.at(-1) ?? 0) ? [] : [look(Math.min(100, most + 10))];
};

/** Half-way between dark and lit, until they are close. */
const thresholdWish = (settings: readonly MeterSetting[]): readonly Wish[] => {
  const firing = firingBracket(settings);
  if (firing === null) return [];
  const { darkAtPct, firesAtPct } = firing;
  if (darkAtPct === null)
    return firesAtPct <= 3 ? [] : [{ powerPct: Math.floor(firesAtPct / 2), why: 'threshold' }];
  return firesAtPct - darkAtPct <= thresholdWithinPct
    ? []
    : [{ powerPct: Math.floor((darkAtPct + firesAtPct) / 2), why: 'threshold' }];
};

/** Up to rated current in steps that the line through the last two settings expects to be bearable; then what is open below. */
const towardsRated = (lit: readonly MeterSetting[], ratedMa: number): readonly Wish[] => {
  const higher = nextHigher(lit, ratedMa);
  return higher === null ? fillGaps(lit, ratedMa) : [higher];
};

/** Null: rated current is reached, or nothing is to be had by going higher. */
const nextHigher = (lit: readonly MeterSetting[], ratedMa: number): Wish | null => {
  const last = lit.at(-1);
  if (last === undefined || last.powerPct >= 100 || last.meanMa >= nearRated * ratedMa) return null;
  const slope = slopeAtEnd(lit);
  if (!(slope > 0)) return null;
  const reach = (ratedMa - last.meanMa) / slope;
  const powerPct = Math.min(100, Math.floor(last.powerPct + Math.min(reach, widestGapPct)));
  return powerPct <= last.powerPct
    ? null
    : { powerPct, why: reach <= widestGapPct ? 'rated' : 'span' };
};

/** No gap wider than a cubic bridges well; and one setting at about nine tenths of rated current. */
const fillGaps = (lit: readonly MeterSetting[], ratedMa: number): readonly Wish[] =>
  lit.slice(1).flatMap((high, i): readonly Wish[] => {
    const low = lit[i];
    if (low === undefined) return [];
    const gap = high.powerPct - low.powerPct;
    const isLast = high === lit.at(-1);
    if (isLast && gap > 4 && low.meanMa < 0.85 * ratedMa && high.meanMa > 0.9 * ratedMa) {
      const share = (0.9 * ratedMa - low.meanMa) / (high.meanMa - low.meanMa);
      return [{ powerPct: Math.round(low.powerPct + share * gap), why: 'rated' }];
    }
    const widest = widestGap(low.powerPct - (lit[0]?.powerPct ?? 0));
    return gap > widest
      ? [
          {
            powerPct: Math.round(low.powerPct + gap / 2),
            why: widest < widestGapPct ? 'bend' : 'span',
          },
        ]
      : [];
  });

/** The curve bends most just above the firing threshold: gaps grow with the distance from it. */
const widestGap = (aboveFiringPct: number): number =>
  Math.min(widestGapPct, 3.5 + 0.6 * aboveFiringPct);

/** How steeply it may go on: as between the last two settings, or as over all of them, whichever is steeper. */
const slopeAtEnd = (lit: readonly MeterSetting[]): number => {
  const last = lit.at(-1);
  const slopes = [lit[0], lit.at(-2)].flatMap((before) =>
    last === undefined || before === undefined || before === last
      ? []
      : [(last.meanMa - before.meanMa) / (last.powerPct - before.powerPct)],
  );
  return Math.max(...slopes);
};

/** Along the straight line through the nearest two settings where it fired. */
const expectedAt = (settings: readonly MeterSetting[], powerPct: number): number | null => {
  const lit = litSettings(settings);
  const above = lit.findIndex((setting) => setting.powerPct > powerPct);
  if (above === 0 || lit.length < 2) return null;
  const [low, high] = above === -1 ? lit.slice(-2) : lit.slice(above - 1, above + 1);
  if (low === undefined || high === undefined) return null;
  const slope = (high.meanMa - low.meanMa) / (high.powerPct - low.powerPct);
  return low.meanMa + slope * (powerPct - low.powerPct);
};
