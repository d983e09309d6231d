import type { Setting } from '../machine/setting.ts';
import type { BelievedChangeover } from './cardRequest.ts';

/** No cell is cut above this many times the line energy of the believed changeover: it would only burn. */
export const energyCeiling = 3;

/** Line energy of a setting over that of the believed changeover at its power: P·n/v over P/v50 = n·v50/v. */
export const energyRatio = (setting: Setting, believed: BelievedChangeover): number =>
  (setting.passes * believed(setting.powerPct).v50MmPerS) / setting.speedMmPerS;

/** The slowest speed that the ceiling allows, in mm/s, not rounded. */
export const slowestAllowed = (
  powerPct: number,
  passes: number,
  believed: BelievedChangeover,
): number => (passes * believed(powerPct).v50MmPerS) / energyCeiling;
