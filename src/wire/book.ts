import { z } from 'zod';
import { id, isoTime, note } from '../formats/saved/bounds.ts';
import { provenSettingShape } from '../formats/saved/provenSetting.ts';
import { settingShape } from '../formats/saved/setting.ts';
import { aimShape, promiseShape } from '../formats/saved/study.ts';
import {
  countsNothing,
  countsShape,
  countsSomething,
  recordedTallyShape,
} from '../formats/saved/tally.ts';
import { standingReply } from './standing.ts';
import { earlierSheetsWish } from './history.ts';

export const byEntry = z.strictObject({
  /** The entry's id, or the four characters of its shelf label. */
  id,
});

export const bookEntry = z.strictObject({
  entry: provenSettingShape,
  tallies: z.array(recordedTallyShape),
  standing: standingReply,
});

export const searchBookQuery = z.strictObject({
  /** Words, a thickness such as `3 mm`, or a label's code; all must fit. */
  text: z.string().max(200).exactOptional(),
  /** A stretch of them; absent: all. */
  from: z.coerce.number().int().min(0).max(1e9).exactOptional(),
  limit: z.coerce.number().int().min(1).max(1000).exactOptional(),
});

/** A setting to be kept. What it holds for and what the model says of it are taken from the study. */
export const keepSettingBody = z.strictObject({
  id: id.exactOptional(),
  studyId: id,
  setting: settingShape,
  keptAt: isoTime.exactOptional(),
  /** Absent: the study's. */
  aim: aimShape.exactOptional(),
  promise: promiseShape.exactOptional(),
  ...earlierSheetsWish,
  /** Needed where a card was read in part: that nobody looked at the rest. */
  rest: z.literal('not-looked-at').exactOptional(),
  /** Needed for a setting that draws more than the tube's rated current. */
  personsChoice: note.exactOptional(),
  note: note.exactOptional(),
});

export const tallyEntryBody = countsShape
  .extend({
    id: id.exactOptional(),
    at: isoTime.exactOptional(),
    /** Absent: the length that the promise is for. */
    partLengthMm: countsShape.shape.partLengthMm.exactOptional(),
    /** Absent: the kept setting. While that is to be run slower, what was run in its place. */
    setting: settingShape.exactOptional(),
  })
  .refine(countsSomething, countsNothing);
