import { z } from 'zod';
import { isoTime } from './saved/bounds.ts';
import { provenSettingShape } from './saved/provenSetting.ts';
import { studyShape } from './saved/study.ts';
import { recordedTallyShape } from './saved/tally.ts';

/** Everything a workshop has, in one file: studies with their cards, readings and tallies, and the book. */
export const exportFileShape = z.strictObject({
  kind: z.literal('throughcut-export'),
  version: z.literal(1),
  exportedAt: isoTime,
  studies: z.array(studyShape).max(10_000),
  book: z.array(provenSettingShape).max(10_000),
  /** Tallies of proven settings whose study is no longer there. */
  tallies: z.array(recordedTallyShape).max(100_000),
});
export type ExportFile = z.infer<typeof exportFileShape>;
