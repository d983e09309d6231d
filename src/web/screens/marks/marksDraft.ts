import { z } from 'zod';
import { markKinds, tapeKinds, usualLineSpacingMm, type Mark } from '../../../core/marking/mark.ts';
import { toneReadings, usualShades } from '../../../core/marking/evenShades.ts';
import { stripKinds, type MarkStrip } from '../../../core/marking/markStrip.ts';
import { shadesKey, type ShadesOfStrip } from '../../../core/marking/markTest.ts';
import type { Setting } from '../../../core/machine/setting.ts';
import { airShape } from '../../../formats/saved/setting.ts';

const setting = z.object({
  powerPct: z.number(),
  speedMmPerS: z.number(),
  passes: z.number(),
  air: airShape.exactOptional(),
});

const shape = z.object({
  kind: z.enum(markKinds),
  /** What was typed; absent: what is kept, or where to begin. */
  score: setting.optional(),
  engrave: setting.optional(),
  lineSpacingMm: z.number().positive().optional(),
  tape: z.enum(tapeKinds).optional(),
  note: z.string(),
  strip: z.enum(stripKinds),
  /** Steps of the strip, from 0: the palest that is seen, and the one that is wanted. */
  palest: z.number().int().optional(),
  wanted: z.number().int().optional(),
  /** How light each step came out, L*, null where it was not read; and of which strip, by its settings. */
  lightness: z.object({ of: z.string(), read: z.array(z.number().nullable()) }).optional(),
  readBy: z.enum(toneReadings).optional(),
  shades: z.number().int().optional(),
});

/** What was chosen and typed so far. */
export type MarksDraft = z.infer<typeof shape>;

export const emptyMarksDraft: MarksDraft = { kind: 'score', note: '', strip: 'shades' };

/** The draft that lies in this browser. */
export const readMarksDraft = (value: unknown): MarksDraft | undefined =>
  shape.safeParse(value).data;

/** What is kept of each kind, and where to begin with it. */
export interface MarksKnown {
  readonly lineSpacingMm?: number;
  readonly score: Setting | undefined;
  readonly engrave: Setting | undefined;
  readonly tape: (typeof tapeKinds)[number] | undefined;
}

/** The line spacing that counts. */
export const spacingIn = (draft: MarksDraft, known: Pick<MarksKnown, 'lineSpacingMm'>): number =>
  draft.lineSpacingMm ?? known.lineSpacingMm ?? usualLineSpacingMm;

/** The mark that the form says; undefined while something of it is missing. */
export const markIn = (draft: MarksDraft, known: MarksKnown): Mark | undefined => {
  const { kind } = draft;
  if (kind === 'tape') {
    const tape = draft.tape ?? known.tape;
    return tape === undefined ? undefined : { kind, tape };
  }
  const said = draft[kind] ?? known[kind];
  if (said === undefined) return undefined;
  return kind === 'score'
    ? { kind, setting: said }
    : { kind, setting: said, lineSpacingMm: spacingIn(draft, known) };
};

/** What is read of a strip of shades: what was typed, else what was kept of this very strip, else nothing yet. */
export const shadesIn = (
  draft: MarksDraft,
  { lineSpacingMm, settings }: Pick<MarkStrip, 'lineSpacingMm' | 'settings'>,
  kept: ShadesOfStrip | undefined,
): ShadesOfStrip => {
  const typed = draft.lightness?.of === shadesKey({ lineSpacingMm, settings });
  const read = typed ? (draft.lightness?.read ?? []) : (kept?.lightness ?? []);
  return {
    ...{ settings, lineSpacingMm },
    lightness: settings.map((_, i) => read[i] ?? null),
    by: draft.readBy ?? kept?.by ?? 'meter',
    count: draft.shades ?? kept?.count ?? usualShades,
  };
};

/** What was typed of shades, once it is kept. */
export const shadesAsKept = {
  lightness: undefined,
  readBy: undefined,
  shades: undefined,
} satisfies Partial<MarksDraft>;

/** The same where it is worth keeping: something was read, of lines as far apart as the mark's. */
export const shadesToKeep = (
  shades: ShadesOfStrip | undefined,
  mark: Mark,
): { readonly shades?: ShadesOfStrip } =>
  shades !== undefined &&
  mark.kind === 'engrave' &&
  mark.lineSpacingMm === shades.lineSpacingMm &&
  shades.lightness.some((seen) => seen !== null)
    ? { shades }
    : {};
