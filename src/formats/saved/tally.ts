import { z } from 'zod';
import type { Habit, Tally } from '../../core/reading/tally.ts';
import type { Foretold } from '../../core/study/foretold.ts';
import type { RecordedTally } from '../../core/study/study.ts';
import { authorShape, count, id, isoTime, label, lengthMm, pct, speedMmPerS } from './bounds.ts';
import { settingShape } from './setting.ts';

const counted = {
  out: count,
  hangs: count,
  stays: count,
  spoilt: count,
  partLengthMm: lengthMm,
  batch: label.exactOptional(),
  sheet: label.exactOptional(),
};

/** What the counts of a tally must fulfil: a tally of nothing is a slip. */
export const countsSomething = (t: Pick<Tally, 'out' | 'hangs' | 'stays' | 'spoilt'>): boolean =>
  t.out + t.hangs + t.stays + t.spoilt > 0;
export const countsNothing = { path: ['out'], message: 'a tally counts at least one part' };

const outOf100 = z.number().min(0).max(100);

/** What was foretold of it, as saved and sent. */
const foretoldShape = z.strictObject({
  outOf100,
  promisedOutOf100: outOf100,
  surePct: pct,
  sureMmPerS: speedMmPerS.exactOptional(),
  evenMmPerS: speedMmPerS.exactOptional(),
  hardlyMmPerS: speedMmPerS.exactOptional(),
}) satisfies z.ZodType<Foretold>;

/** What a count of one sheet of an order says beside it. */
export const ofOrder = {
  orderId: id.exactOptional(),
  foretold: foretoldShape.exactOptional(),
};

/** The counts alone, for a tally whose setting is known from elsewhere. */
export const countsShape = z.strictObject(counted);

/** A tally as saved and sent. */
export const recordedTallyShape = z
  .strictObject({
    id,
    at: isoTime,
    provenSettingId: id.exactOptional(),
    ...ofOrder,
    setting: settingShape,
    ...counted,
    ...authorShape,
    correctedBy: label.exactOptional(),
  })
  .refine(countsSomething, countsNothing) satisfies z.ZodType<RecordedTally>;

/** A habit as saved and sent. */
export const habitShape = z.strictObject({
  powerPct: pct,
  speedMmPerS,
  comesOut: z.enum(['always', 'nearly', 'often-not']),
}) satisfies z.ZodType<Habit>;
