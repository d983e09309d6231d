import { z } from 'zod';
import type { Habit, Tally } from '../../core/reading/tally.ts';
import type { RecordedTally } from '../../core/study/study.ts';
import { count, id, isoTime, label, lengthMm, pct, speedMmPerS } from './bounds.ts';
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

/** The counts alone, for a tally whose setting is known from elsewhere. */
export const countsShape = z.strictObject(counted);

/** A tally as saved and sent. */
export const recordedTallyShape = z
  .strictObject({
    id,
    at: isoTime,
    provenSettingId: id.exactOptional(),
    setting: settingShape,
    ...counted,
  })
  .refine(countsSomething, countsNothing) satisfies z.ZodType<RecordedTally>;

/** A habit as saved and sent. */
export const habitShape = z.strictObject({
  powerPct: pct,
  speedMmPerS,
  comesOut: z.enum(['always', 'nearly', 'often-not']),
}) satisfies z.ZodType<Habit>;
