import type { Problem } from '../problem.ts';

/** Why a ramp cannot be used, or what it was that it did not show. */
export const focusCodes = [
  'ramp-meets-nozzle',
  'ramp-too-short',
  'ramp-too-flat',
  'ramp-too-steep',
  'ramp-no-room',
  'ramp-setting-out-of-range',
  'focus-readings-too-few',
  'focus-reading-off-strip',
  'focus-beyond-high-end',
  'focus-beyond-low-end',
  'focus-line-never-fades',
  'focus-widths-level',
  'focus-near-high-end',
  'focus-near-low-end',
  'focus-lines-disagree',
  'focus-depth-unknown',
  'focus-gap-too-small',
] as const;

export type FocusCode = (typeof focusCodes)[number];

/** A problem with one of these codes, so that a slip in a code does not compile. */
export type FocusProblem = Problem & { readonly code: FocusCode };
