import type { Setting } from '../machine/setting.ts';

/** What stands beside a cut on the same sheet: a line that marks, a face that is filled with lines, what covers it meanwhile. */
export const markKinds = ['score', 'engrave', 'tape'] as const;
export type MarkKind = (typeof markKinds)[number];

/** What covers the face while it is cut and marked. */
export const tapeKinds = ['none', 'paper', 'film'] as const;
export type TapeKind = (typeof tapeKinds)[number];

export interface Engraving {
  readonly setting: Setting;
  /** From one line of the filling to the next. */
  readonly lineSpacingMm: number;
}

export type Mark =
  | { readonly kind: 'score'; readonly setting: Setting }
  | ({ readonly kind: 'engrave' } & Engraving)
  | { readonly kind: 'tape'; readonly tape: TapeKind };

/** Whether the beam makes it. */
export const isDrawn = (mark: Mark): mark is Exclude<Mark, { readonly kind: 'tape' }> =>
  mark.kind !== 'tape';

/** Ten lines a mm. Common practice, no source. */
export const usualLineSpacingMm = 0.1;

/** A line is hardly wider, mm: taken wide, so that a filling is not held to burn less than it does. Common practice, no source. */
const wideLineMm = 0.2;

/** How many lines of a filling burn each place of it; never fewer than one. */
export const linesOver = (lineSpacingMm: number): number => Math.max(1, wideLineMm / lineSpacingMm);
