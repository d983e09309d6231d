import type { Setting } from '../machine/setting.ts';

/** Parts that are wanted, and what of the work decides how many of them fail together. */
export interface Order {
  /** Good parts wanted, 1 or more. */
  readonly parts: number;
  /** Length of cut of one part, in mm. */
  readonly partLengthMm: number;
  /** Parts that come from one sheet and share its luck. More of them on a sheet: the same mean, a wider count. */
  readonly partsPerSheet: number;
  /** What they are to be cut at. */
  readonly setting: Setting;
}

/** A count of parts: the mean, and a band in which it lies nine times in ten. */
export interface CountBand {
  readonly mean: number;
  readonly low: number;
  readonly high: number;
}

/** How sure a plan is to be enough, 0–1. */
export const planSure = 0.9;

/** An order of more parts is asked about in pieces. */
export const mostOrderParts = 5000;
