import { z } from 'zod';
import type { ProvenSetting } from '../core/book/provenSetting.ts';
import { byTestList, type MachineTestName, type TestList } from '../core/machineTests.ts';
import type { WorkshopMachine } from '../core/machine/workshopMachine.ts';
import { done, type Outcome } from '../core/problem.ts';
import type { RecordedTally, SavedStudy } from '../core/study/study.ts';
import { parseJsonText, parseWith } from './border.ts';
import { machineTestKinds, type TestLists, type TestShapeOf } from './machineTests.ts';
import { machinesOfEarlierExport } from './earlierExport.ts';
import { isoTime } from './saved/bounds.ts';
import { machineShape } from './saved/machine.ts';
import { materialKnownInFile } from './saved/materialKnown.ts';
import { provenSettingShape } from './saved/provenSetting.ts';
import { savedStudyShape } from './saved/study.ts';
import { recordedTallyShape } from './saved/tally.ts';
import { workshopMachineShape } from './saved/workshopMachine.ts';

/** Everything a workshop has. */
export interface ExportFile extends TestLists {
  readonly kind: 'throughcut-export';
  readonly version: 3;
  /** ISO 8601, UTC. */
  readonly exportedAt: string;
  /** Whoever brings it in has looked at every material in it whose name leaves open what it is. */
  readonly materialKnown?: boolean;
  readonly machines: readonly WorkshopMachine[];
  /** Each names a machine of the file. */
  readonly studies: readonly SavedStudy[];
  readonly book: readonly ProvenSetting[];
  /** Tallies of proven settings whose study is no longer there. */
  readonly tallies: readonly RecordedTally[];
  /** What was stored but could not be read, and is missing here: its kind of row and its name. */
  readonly leftOut?: readonly { readonly table: string; readonly id: string }[];
}

/** Tests of machines over time, each kind in its list. */
const testLists = byTestList((name) => z.array(machineTestKinds[name].shape).default([])) as {
  readonly [Name in MachineTestName as TestList<Name>]: z.ZodDefault<z.ZodArray<TestShapeOf<Name>>>;
};

/** Lists are as long as the workshop: whatever could be stored can be read in again. */
const everyVersion = {
  kind: z.literal('throughcut-export'),
  exportedAt: isoTime,
  materialKnown: materialKnownInFile,
  book: z.array(provenSettingShape),
  tallies: z.array(recordedTallyShape),
  ...testLists,
  leftOut: z.array(z.strictObject({ table: z.string(), id: z.string() })).exactOptional(),
};

/** The present version, as it is written. */
const presentExport = z.strictObject({
  ...everyVersion,
  version: z.literal(3),
  machines: z.array(workshopMachineShape),
  studies: z.array(savedStudyShape),
}) satisfies z.ZodType<ExportFile>;

/** Versions 1 and 2: each study described a machine for itself. 1 is from before meterings were kept, and has none. */
const earlierExport = z.strictObject({
  ...everyVersion,
  version: z.literal([1, 2]),
  studies: z.array(savedStudyShape.omit({ machineId: true }).extend({ machine: machineShape })),
});

/** What the server gives as its export. */
export const exportFileShape = presentExport;

/** What may be brought in: every version that was ever written, made into the present one. */
export const importedFileShape = z
  .discriminatedUnion('version', [presentExport, earlierExport])
  .transform((file): ExportFile =>
    file.version === 3 ? file : { ...file, version: 3, ...machinesOfEarlierExport(file) },
  );

/**
 * Reads an export from text, whole or not at all (docs/formats/export.md). Refuses what is no JSON, unknown versions and
 * unknown keys, and says where.
 */
export const parseExportFile = (text: string): Outcome<ExportFile> => {
  const json = parseJsonText(text);
  if (!json.ok) return json;
  const read = parseWith(importedFileShape, json.value);
  return read.ok ? done(read.value) : read;
};
