import { z } from 'zod';
import type { Outcome } from '../core/problem.ts';
import { parseJsonText, parseWith } from './border.ts';
import type { BedTest } from '../core/bed/bedTest.ts';
import type { ProvenSetting } from '../core/book/provenSetting.ts';
import type { FocusTest } from '../core/machine/focusTest.ts';
import type { Metering } from '../core/machine/metering.ts';
import type { RecordedTally, Study } from '../core/study/study.ts';
import { bedTestShape } from './saved/bedTest.ts';
import { isoTime } from './saved/bounds.ts';
import { focusTestShape } from './saved/focusTest.ts';
import { materialKnownInFile } from './saved/materialKnown.ts';
import { meteringShape } from './saved/metering.ts';
import { provenSettingShape } from './saved/provenSetting.ts';
import { studyShape } from './saved/study.ts';
import { recordedTallyShape } from './saved/tally.ts';

/** Everything a workshop has. */
export interface ExportFile {
  readonly kind: 'throughcut-export';
  /** 1: before meterings were kept; such a file has none. */
  readonly version: 1 | 2;
  /** ISO 8601, UTC. */
  readonly exportedAt: string;
  /** Whoever brings it in has looked at every material in it whose name leaves open what it is. */
  readonly materialKnown?: boolean;
  readonly studies: readonly Study[];
  readonly book: readonly ProvenSetting[];
  /** Tallies of proven settings whose study is no longer there. */
  readonly tallies: readonly RecordedTally[];
  /** What the milliammeter said, over time. */
  readonly meterings: readonly Metering[];
  /** Where the focus was found, over time. */
  readonly focusTests: readonly FocusTest[];
  /** How alike the bed cut in its four corners, over time. */
  readonly bedTests: readonly BedTest[];
  /** What was stored but could not be read, and is missing here: its kind of row and its name. */
  readonly leftOut?: readonly { readonly table: string; readonly id: string }[];
}

/**
 * Everything a workshop has, in one file: studies with their cards, readings and tallies, the book, and the machine's own
 * tests. Lists are as long as the workshop: whatever could be stored can be read in again.
 */
export const exportFileShape = z.strictObject({
  kind: z.literal('throughcut-export'),
  version: z.literal([1, 2]),
  exportedAt: isoTime,
  materialKnown: materialKnownInFile,
  studies: z.array(studyShape),
  book: z.array(provenSettingShape),
  tallies: z.array(recordedTallyShape),
  meterings: z.array(meteringShape).default([]),
  focusTests: z.array(focusTestShape).default([]),
  bedTests: z.array(bedTestShape).default([]),
  leftOut: z.array(z.strictObject({ table: z.string(), id: z.string() })).exactOptional(),
}) satisfies z.ZodType<ExportFile>;

/**
 * Reads an export from text, whole or not at all (docs/formats/export.md). Refuses what is no JSON, unknown versions and
 * unknown keys, and says where.
 */
export const parseExportFile = (text: string): Outcome<ExportFile> => {
  const json = parseJsonText(text);
  return json.ok ? parseWith(exportFileShape, json.value) : json;
};
