import { z } from 'zod';
import { id, isoTime, note } from '../formats/saved/bounds.ts';
import { provenSettingShape } from '../formats/saved/provenSetting.ts';
import { settingShape } from '../formats/saved/setting.ts';
import { stockShape } from '../formats/saved/stock.ts';
import { aimShape, promiseShape } from '../formats/saved/study.ts';
import {
  countsNothing,
  countsShape,
  countsSomething,
  recordedTallyShape,
} from '../formats/saved/tally.ts';
import { saidInFull } from './problem.ts';
import { standingReply } from './standing.ts';
import { earlierSheetsWish } from './history.ts';
import { listQuery } from './study.ts';

export const byEntry = z.strictObject({
  /** The entry's id, or the four characters of its shelf label. */
  id,
});

export const bookEntry = z.strictObject({
  entry: provenSettingShape,
  tallies: z.array(recordedTallyShape),
  standing: standingReply,
  /** Codes of kept settings from which it differs only by air. */
  onlyByAir: z.array(z.string()).exactOptional(),
});

/** One of them, and how it suits another sheet that lies on the bed. */
export const bookEntryRead = bookEntry.extend({
  onBed: z
    .strictObject({
      stock: stockShape,
      /** Empty where the sheet differs in nothing from what the setting holds for. */
      differs: z.array(saidInFull),
    })
    .exactOptional(),
});

export const searchBookQuery = listQuery.extend({
  /** Only those that were kept from this sheet. */
  studyId: id.exactOptional(),
});

export const keptLikeQuery = z.strictObject({ studyId: id });

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

/** What of a kept setting may be said anew. */
export const changeEntryBody = z.strictObject({
  /** Null: it is taken away. */
  note: note.nullable(),
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
