import { z } from 'zod';
import { id, isoTime } from '../formats/saved/bounds.ts';
import { machineShape } from '../formats/saved/machine.ts';
import { readingEventShape } from '../formats/saved/readingEvent.ts';
import { stockShape } from '../formats/saved/stock.ts';
import { studyHead, studyShape } from '../formats/saved/study.ts';
import {
  countsNothing,
  countsShape,
  countsSomething,
  habitShape,
  ofOrder,
} from '../formats/saved/tally.ts';
import { settingShape } from '../formats/saved/setting.ts';

export const byStudy = z.strictObject({ id });

/** A study with what the store knows about it. */
export const storedStudy = z.strictObject({
  study: studyShape,
  /** Rises by at least one with every change: two equal revisions are the same study. */
  revision: z.number().int(),
  touchedAt: isoTime,
});

/** One line of the list of studies. */
export const studySummary = z.strictObject({
  id,
  isExample: z.boolean(),
  createdAt: isoTime,
  touchedAt: isoTime,
  revision: z.number().int(),
  stock: stockShape,
  machineId: id,
  /** The machine's name, where it has one. */
  machine: machineShape.shape.name,
  /** The kept setting that its strip checks. */
  stripOf: id.exactOptional(),
  cardCodes: z.array(z.string()),
  tallyCount: z.number().int(),
});

/** What of a list is asked for. */
export const listQuery = z.strictObject({
  /** Words, a thickness such as `3 mm`, or a code; all must fit. */
  text: z.string().max(200).exactOptional(),
  /** A stretch of them; absent: all. */
  from: z.coerce.number().int().min(0).max(1e9).exactOptional(),
  limit: z.coerce.number().int().min(1).max(1000).exactOptional(),
});

/** The same, or only sheets like another one. */
export const listStudiesQuery = listQuery.extend({
  /** Only other sheets of the same material as this one. */
  like: id.exactOptional(),
});

/** A study begun: only the sheet is needed. A known id returns the study that has it, unchanged. */
export const startStudyBody = z.strictObject({
  id: id.exactOptional(),
  createdAt: isoTime.exactOptional(),
  stock: stockShape,
  /** Absent: the default machine. */
  machineId: id.exactOptional(),
  /** A description instead of an id: a machine of the same name is described anew, another is added. */
  machine: machineShape.exactOptional(),
  promise: studyHead.promise.exactOptional(),
  aim: studyHead.aim.exactOptional(),
  ask: studyHead.ask.exactOptional(),
  habit: studyHead.habit,
});

/** What may be changed afterwards; each is replaced whole. `habit: null` takes it away. */
export const changeStudyBody = z
  .strictObject({
    stock: stockShape.exactOptional(),
    machineId: id.exactOptional(),
    /** What is known of its machine, for every sheet of it. */
    machine: machineShape.exactOptional(),
    promise: studyHead.promise.exactOptional(),
    aim: studyHead.aim.exactOptional(),
    ask: studyHead.ask.exactOptional(),
    habit: habitShape.nullable().exactOptional(),
  })
  .refine((body) => Object.keys(body).length > 0, { message: 'says nothing to change' });

export const recordReadingsBody = z.strictObject({
  events: z.array(readingEventShape).min(1).max(2000),
});

/** `stored`: how many were new. Events that were here before count for nothing. */
export const recordReadingsReply = z.strictObject({
  stored: z.number().int(),
  revision: z.number().int(),
});

export const correctTallyBody = countsShape.refine(countsSomething, countsNothing);

export const recordTallyBody = countsShape
  .extend({
    id: id.exactOptional(),
    at: isoTime.exactOptional(),
    provenSettingId: id.exactOptional(),
    ...ofOrder,
    setting: settingShape,
  })
  .refine(countsSomething, countsNothing);
