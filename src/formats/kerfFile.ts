import { z } from 'zod';
import { slotFits, type Joint, type SlotRead } from '../core/kerf/joints.ts';
import {
  combDirections,
  usualCombMeasure,
  type CombMeasure,
  type KerfComb,
} from '../core/kerf/kerfComb.ts';
import type { Kerf, KerfDoubt, KerfEstimate } from '../core/kerf/kerf.ts';
import type { KerfResult } from '../core/kerf/tellKerf.ts';
import { done, type Outcome } from '../core/problem.ts';
import type { Said, Say } from './answerFile.ts';
import { parseWith } from './border.ts';
import { label, lengthMm, thicknessMm } from './saved/bounds.ts';

const most = { combs: 50, readings: 50, slots: 100, strips: 200 };

const readingsMm = z.array(lengthMm).min(1).max(most.readings);

/** A comb as it was measured, in files and as saved. */
export const combShape = z.strictObject({
  place: label.exactOptional(),
  direction: z.enum(combDirections),
  strips: z.number().int().min(2).max(most.strips),
  nominalMm: lengthMm,
  measuredMm: readingsMm,
  barMm: readingsMm.exactOptional(),
});

/** A limit of what may be off: nothing, or up to a millimetre. */
const limitMm = z.number().min(0).max(1);

/** What measures, as saved: all of it is said. */
export const combMeasureShape = z.strictObject({
  resolutionMm: limitMm,
  caliperLimitMm: limitMm,
  scaleLimitPct: z.number().min(0).max(5),
  gapMm: limitMm,
});

const measureShape = combMeasureShape.shape;

export const slotsShape = z
  .array(z.strictObject({ drawnMm: lengthMm, fit: z.enum(slotFits) }))
  .max(most.slots);

export const kerfFileShape = z
  .strictObject({
    version: z.literal(1),
    combs: z.array(combShape).max(most.combs).default([]),
    resolutionMm: measureShape.resolutionMm.default(usualCombMeasure.resolutionMm),
    caliperLimitMm: measureShape.caliperLimitMm.default(usualCombMeasure.caliperLimitMm),
    scaleLimitPct: measureShape.scaleLimitPct.default(usualCombMeasure.scaleLimitPct),
    gapMm: measureShape.gapMm.default(usualCombMeasure.gapMm),
    slots: slotsShape.exactOptional(),
    tongueMm: thicknessMm.exactOptional(),
  })
  .refine(({ slots, tongueMm }) => slots === undefined || tongueMm !== undefined, {
    path: ['tongueMm'],
    message: 'slots need the thickness of the tongue that was tried in them',
  });

/** What was measured of a comb and a slot card, as a file says it. */
export interface KerfFile {
  readonly combs: readonly KerfComb[];
  readonly measure: CombMeasure;
  readonly slots?: readonly SlotRead[];
  readonly tongueMm?: number;
}

/** Reads a file of combs and slots (docs/formats/kerf.md), strict about keys, types and ranges. */
export const parseKerfFile = (json: unknown): Outcome<KerfFile> => {
  const parsed = parseWith(kerfFileShape, json);
  if (!parsed.ok) return parsed;
  const { combs, slots, tongueMm, resolutionMm, caliperLimitMm, scaleLimitPct, gapMm } =
    parsed.value;
  return done({
    combs,
    measure: { resolutionMm, caliperLimitMm, scaleLimitPct, gapMm },
    ...(slots === undefined ? {} : { slots }),
    ...(tongueMm === undefined ? {} : { tongueMm }),
  });
};

/** A kerf as it is printed: degrees of freedom without end are null. */
type Printed<K> = Omit<K, 'degrees' | 'doubts'> & {
  readonly degrees: number | null;
  readonly doubts: readonly (Omit<KerfDoubt, 'degrees'> & { readonly degrees: number | null })[];
};

/** What the combs and slots tell, as it is printed. */
export interface KerfResultFile {
  readonly version: 1;
  readonly kerf?: Omit<Printed<KerfEstimate>, 'remarks' | 'byDirection'> & {
    readonly byDirection: readonly Printed<KerfEstimate['byDirection'][number]>[];
  };
  readonly growMm?: number;
  readonly joints?: readonly Joint[];
  readonly remarks: readonly Said[];
}

export const kerfResultFile = (
  { remarks, kerf, ...told }: KerfResult,
  say: Say,
): KerfResultFile => ({
  version: 1,
  ...(kerf === undefined
    ? {}
    : { kerf: { ...printed(kerf), byDirection: kerf.byDirection.map(printed) } }),
  ...told,
  remarks: remarks.map((remark) => {
    const { code, message } = say(remark);
    return { code, message };
  }),
});

const printed = <K extends Pick<Kerf, 'degrees' | 'doubts'>>(kerf: K): Printed<K> => ({
  ...kerf,
  degrees: finite(kerf.degrees),
  doubts: kerf.doubts.map((doubt) => ({ ...doubt, degrees: finite(doubt.degrees) })),
});

const finite = (degrees: number): number | null => (Number.isFinite(degrees) ? degrees : null);
