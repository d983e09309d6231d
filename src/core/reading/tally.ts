import type { Setting } from '../machine/setting.ts';

/** The count from production: 200 cut, 197 out, 2 knife (hangs), 0 not through (stays), 1 pocket (spoilt). */
export interface Tally {
  readonly setting: Setting;
  readonly out: number;
  readonly hangs: number;
  readonly stays: number;
  /** Parts lost to a glue pocket or a knot. */
  readonly spoilt: number;
  /** Length of cut of one part. */
  readonly partLengthMm: number;
  readonly batch?: string;
  readonly sheet?: string;
}

/** What the workshop cuts it with now, and whether the parts come out. */
export interface Habit {
  readonly powerPct: number;
  readonly speedMmPerS: number;
  readonly comesOut: 'always' | 'nearly' | 'often-not';
}
