import type { Point } from '../../core/path/point.ts';
import type { GcodeMove } from './gcodeProgram.ts';

/** A beam that is told to be on while the head feeds. In a rapid move it is a trap, not a cut. */
export const isLit = ({ type, spindle, s }: GcodeMove): boolean =>
  type !== 'rapid' && spindle !== 5 && s > 0;

export const seenFromAbove = ([x, y]: GcodeMove['end']): Point => [x, y];

/** In mm/s; under inverse time from length and minutes. */
export const speedOf = ({ feedMmPerMin, lengthMm, minutes }: GcodeMove): number =>
  (feedMmPerMin ?? lengthMm / Math.max(minutes, 1e-9)) / 60;

/** Steady power, power that follows speed, or none. */
export const beamOf = ({ spindle }: GcodeMove): 'constant' | 'speed-following' | 'off' =>
  spindle === 5 ? 'off' : spindle === 4 ? 'speed-following' : 'constant';
