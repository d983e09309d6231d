import type { Machine, TubePoint } from '../machine/machine.ts';
import {
  currentMaAt,
  powerPctAt,
  powerPctStraightOn,
  tubeCurve,
  type TubeCurve,
} from './tubeCurve.ts';

/** The highest setting that may be recommended, and what holds it there. */
export interface PowerLimit {
  readonly powerPct: number;
  readonly because: 'machine' | 'rated-current';
}

/** The numbers of "40 % setting, about 11 mA, 46 % of rated", as far as they are known. */
export interface DescribedPower {
  readonly powerPct: number;
  readonly currentMa?: number;
  readonly ratedCurrentPct?: number;
  /** The current lies past the readings: a guess along a straight line. */
  readonly extrapolated: boolean;
  /** The tube draws more than it is rated for. False also where the current is not known. */
  readonly overdriven: boolean;
}

/** So that the very setting of the limit, computed there and back, is not called overdriven. */
const rounding = 1e-9;

/** As much of a machine as bounds its power. */
export type PoweredMachine = Pick<Machine, 'maxPowerPct' | 'ratedCurrentMa' | 'tubePoints'>;

/** A machine's tube as far as it is known: sound readings and a rating. */
const tubeOf = (
  machine: Pick<Machine, 'ratedCurrentMa' | 'tubePoints'>,
): { readonly curve: TubeCurve | null; readonly ratedMa: number | null } => {
  const curve = tubeCurve(machine);
  return {
    curve: curve?.ok === true ? curve.value : null,
    ratedMa: machine.ratedCurrentMa ?? null,
  };
};

/**
 * The lower of the machine's own limit and the setting that reaches the tube's rated current. Where the readings (and
 * their straight continuation, however far) never reach the rated current, the machine's own limit stands; where even the
 * lowest setting known is above it, the limit is 0: no setting is known to keep the tube within its rating. Readings too few
 * for a curve still limit it where one lies above the rating: in proportion below that one.
 */
export const powerLimit = (machine: PoweredMachine): PowerLimit => {
  const ownLimit: PowerLimit = { powerPct: machine.maxPowerPct, because: 'machine' };
  const { curve, ratedMa } = tubeOf(machine);
  if (ratedMa === null) return ownLimit;
  const reached =
    curve === null
      ? belowAnyAbove(machine.tubePoints ?? [], ratedMa)
      : (powerPctAt(curve, ratedMa)?.powerPct ??
        (isAlwaysAbove(curve, ratedMa) ? 0 : powerPctStraightOn(curve, ratedMa)));
  if (reached === null || reached >= machine.maxPowerPct) return ownLimit;
  return { powerPct: Math.max(0, reached), because: 'rated-current' };
};

/** Null where no reading lies above the rating. */
const belowAnyAbove = (points: readonly TubePoint[], ratedMa: number): number | null => {
  const above = points.filter(({ currentMa }) => currentMa > ratedMa);
  return above.length === 0
    ? null
    : Math.min(...above.map(({ powerPct, currentMa }) => (powerPct * ratedMa) / currentMa));
};

const isAlwaysAbove = (curve: TubeCurve, currentMa: number): boolean =>
  curve.between.y.every((known) => known > currentMa);

/**
 * The delivered fraction as a function of the setting: current over rated current where there are readings and a
 * rating, else setting over 100. 0 where the tube does not fire; above 1 where it is overdriven; null where the setting
 * lies too far past the readings to say. For many settings of one machine: the curve is made once.
 */
export const deliveryOf = (machine: Machine): ((powerPct: number) => number | null) => {
  const { curve, ratedMa } = tubeOf(machine);
  if (curve === null || ratedMa === null) return (powerPct) => powerPct / 100;
  return (powerPct) => {
    const drawn = currentMaAt(curve, powerPct);
    return drawn === null ? null : drawn.currentMa / ratedMa;
  };
};

/** The delivered fraction at one setting: see {@link deliveryOf}. */
export const deliveredFraction = (machine: Machine, powerPct: number): number | null =>
  deliveryOf(machine)(powerPct);

/** What one setting means at the tube, as far as it is known. */
export const describePower = (machine: Machine, powerPct: number): DescribedPower => {
  const { curve, ratedMa } = tubeOf(machine);
  const drawn = curve === null ? null : currentMaAt(curve, powerPct);
  if (drawn === null) return { powerPct, extrapolated: false, overdriven: false };
  const { currentMa, extrapolated } = drawn;
  if (ratedMa === null) return { powerPct, currentMa, extrapolated, overdriven: false };
  return {
    powerPct,
    currentMa,
    ratedCurrentPct: (100 * currentMa) / ratedMa,
    extrapolated,
    overdriven: currentMa > ratedMa * (1 + rounding),
  };
};

/** The delivered fraction, never 0; where the tube's readings do not reach, the setting itself. */
export const deliveredOrSetting = (machine: Machine): ((powerPct: number) => number) => {
  const delivered = deliveryOf(machine);
  return (powerPct) => Math.max(0.01, delivered(powerPct) ?? powerPct / 100);
};

/** Many tubes give no steady light below this setting (common practice, no source). */
const commonlySteadyPct = 12;

/** The lowest setting to ask a tube for: where its readings show that it fires, else where most do. */
export const leastSteadyPct = (machine: Machine): number => {
  const { curve } = tubeOf(machine);
  return Math.min(powerLimit(machine).powerPct, curve?.firing?.firesAtPct ?? commonlySteadyPct);
};
