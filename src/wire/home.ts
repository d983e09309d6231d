import { z } from 'zod';
import { id, isoTime } from '../formats/saved/bounds.ts';
import { stockShape } from '../formats/saved/stock.ts';
import { provenSettingShape } from '../formats/saved/provenSetting.ts';
import { recordedTallyShape } from '../formats/saved/tally.ts';
import { saidInFull } from './problem.ts';
import { standingReply } from './standing.ts';
import { studySummary } from './study.ts';

export const healthReply = z.strictObject({ status: z.literal('ok'), version: z.string() });

/** How the backups on a schedule stand. */
export const backupsReply = z.strictObject({
  /** Whether any are made (`THROUGHCUT_BACKUP`). */
  isOn: z.boolean(),
  /** When the newest that is there was made. */
  lastAt: isoTime.exactOptional(),
  /** The last one was not made, and why. */
  failing: z.strictObject({ since: isoTime, said: saidInFull }).exactOptional(),
});

/** What the first screen needs, in one go. */
export const homeReply = z.strictObject({
  /** Whether anything of the workshop's own is stored. */
  hasWork: z.boolean(),
  exampleOpen: z.boolean(),
  /** The sheet on the bed: the one last put there, the workshop's own before the example's. */
  latest: z
    .strictObject({
      study: studySummary,
      lastTally: recordedTallyShape.exactOptional(),
      kept: provenSettingShape.exactOptional(),
      standing: standingReply.exactOptional(),
    })
    .exactOptional(),
  /** Sheets that were removed and can come back, the last removed first. */
  removed: z.array(z.strictObject({ id, stock: stockShape, removedAt: isoTime })).exactOptional(),
  /** What is stored but cannot be read. */
  unreadable: z.array(saidInFull).exactOptional(),
});
