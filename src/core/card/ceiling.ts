import type { Setting } from '../machine/setting.ts';
import type { BelievedChangeover, BelievedSpeed } from './cardRequest.ts';

/** Nothing is cut above this many times the line energy of the believed changeover: it would only burn. */
export const energyCeiling = 3;

/**
 * The changeover against which line energies are held: the believed one, but never slower than what is thinkable for the
 * material at all, whatever was said of it.
 */
const heldAgainst = ({ v50MmPerS, thinkableFromMmPerS = 0 }: BelievedSpeed): number =>
  Math.max(v50MmPerS, thinkableFromMmPerS);

/** Line energy of a setting over that of the believed changeover at its power: P·n/v over P/v50 = n·v50/v. */
export const energyRatio = (
  { powerPct, passes, speedMmPerS }: Pick<Setting, 'powerPct' | 'passes' | 'speedMmPerS'>,
  believed: BelievedChangeover,
): number => (passes * heldAgainst(believed(powerPct))) / speedMmPerS;

/** The slowest speed that the ceiling allows, in mm/s, not rounded. `times`: another ceiling than that of cells. */
export const slowestAllowed = (
  powerPct: number,
  passes: number,
  believed: BelievedChangeover,
  times: number = energyCeiling,
): number => (passes * heldAgainst(believed(powerPct))) / times;
