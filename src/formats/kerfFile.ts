import { z } from 'zod';
import { slotFits, type Joint, type SlotRead } from '../core/kerf/joints.ts';
import {
  combDirections,
  usualCombMeasure,
  type CombMeasure,
  type KerfComb,
} from '../core/kerf/kerfComb.ts';
import type { KerfEstimate } from '../core/kerf/kerf.ts';
import { done, type Outcome, type Problem } from '../core/problem.ts';
import type { Said, Say } from './answerFile.ts';
import { parseWith } from './border.ts';
import { label, lengthMm, thicknessMm } from './saved/bounds.ts';

const most = { combs: 50, readings: 50, slots: 100, strips: 200 };

const readingsMm = z.array(lengthMm).min(1).max(most.readings);

const combShape = z.strictObject({
  place: label.exactOptional(),
  direction: z.enum(combDirections),
  strips: z.number().int().min(2).max(most.strips),
  nominalMm: lengthMm,
  measuredMm: readingsMm,
  barMm: readingsMm.exactOptional(),
});

/** A limit of what may be off: nothing, or up to a millimetre. */
const limitMm = z.number().min(0).max(1);

const kerfFileShape = z
  .strictObject({
    version: z.literal(1),
    combs: z.array(combShape).max(most.combs).default([]),
    resolutionMm: limitMm.default(usualCombMeasure.resolutionMm),
    caliperLimitMm: limitMm.default(usualCombMeasure.caliperLimitMm),
    scaleLimitPct: z.number().min(0).max(5).default(usualCombMeasure.scaleLimitPct),
    gapMm: limitMm.default(usualCombMeasure.gapMm),
    slots: z
      .array(z.strictObject({ drawnMm: lengthMm, fit: z.enum(slotFits) }))
      .max(most.slots)
      .exactOptional(),
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

/** What the combs and slots tell, as it is printed. */
export interface KerfResultFile {
  readonly version: 1;
  readonly kerf?: Omit<KerfEstimate, 'remarks'>;
  readonly growMm?: number;
  readonly joints?: readonly Joint[];
  readonly remarks: readonly Said[];
}

export const kerfResultFile = (
  {
    remarks,
    ...told
  }: Omit<KerfResultFile, 'version' | 'remarks'> & { readonly remarks: readonly Problem[] },
  say: Say,
): KerfResultFile => ({
  version: 1,
  ...told,
  remarks: remarks.map((remark) => {
    const { code, message } = say(remark);
    return { code, message };
  }),
});
