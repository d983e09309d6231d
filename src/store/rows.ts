import type { z } from 'zod';
import type { RemovedStudy } from '../app/ports/ports.ts';
import type { StoredStudy, StudyHead } from '../app/ports/stored.ts';
import type { ProvenSetting } from '../core/book/provenSetting.ts';
import type { SettingChange } from '../core/book/settingChange.ts';
import type { Card } from '../core/card/card.ts';
import type { MachineTestName } from '../core/machineTests.ts';
import { machineTestKinds, type MachineTestOf } from '../formats/machineTests.ts';
import { problemOf, type ProblemOf } from '../core/problem.ts';
import type { WorkshopMachine } from '../core/machine/workshopMachine.ts';
import { omit } from '../core/omit.ts';
import type { ReadingEvent } from '../core/reading/readingEvent.ts';
import type { StartedOrder } from '../core/study/startedOrder.ts';
import type { RecordedTally, Study } from '../core/study/study.ts';
import { cardShape } from '../formats/saved/card.ts';
import { machineShape } from '../formats/saved/machine.ts';
import { machineChangesShape } from '../formats/saved/workshopMachine.ts';
import { provenSettingShape } from '../formats/saved/provenSetting.ts';
import { settingChangeShape } from '../formats/saved/settingChange.ts';
import { readingEventShape } from '../formats/saved/readingEvent.ts';
import { stockShape } from '../formats/saved/stock.ts';
import { aimShape, askShape, promiseShape, savedStudyShape } from '../formats/saved/study.ts';
import { startedOrderShape } from '../formats/saved/startedOrder.ts';
import { habitShape, recordedTallyShape } from '../formats/saved/tally.ts';
import { entryFoundBy, machineFoundBy, stockFoundBy } from './foundBy.ts';
import { StoreError } from './storeError.ts';
import type {
  EntryRow,
  MachineRow,
  MachineTestRow,
  RemovedStudyRow,
  StudyRow,
  TallyRow,
} from './tables.ts';

/** Keeps what can be read of a list, and notes what cannot. */
export type ReadEach = <R, T>(rows: readonly R[], read: (row: R) => T) => readonly T[];

/** Reads each row on its own, so that one that is damaged does not hide the rest. */
export const readingEach =
  (note: (problem: ProblemOf<'store-row-unreadable'>) => void): ReadEach =>
  (rows, read) =>
    rows.flatMap((row) => {
      try {
        return [read(row)];
      } catch (thrown) {
        if (!(thrown instanceof StoreError) || thrown.problem.code !== 'store-row-unreadable')
          throw thrown;
        note(thrown.problem);
        return [];
      }
    });

/** Reads a JSON column. Throws `store-row-unreadable`: a row that this program did not write. */
const parsed = <S extends z.ZodType>(
  shape: S,
  text: string,
  table: string,
  id: string,
): z.output<S> => {
  try {
    return shape.parse(JSON.parse(text));
  } catch (cause) {
    throw new StoreError(problemOf('store-row-unreadable', { table, id }), cause);
  }
};

export const headColumns = (head: StudyHead) => ({
  ...stockFoundBy(head.stock),
  stock: JSON.stringify(head.stock),
  machine_id: head.machineId,
  promise: JSON.stringify(head.promise),
  aim: head.aim,
  ask: JSON.stringify(head.ask),
  habit: head.habit === undefined ? null : JSON.stringify(head.habit),
});

export const stockOf = ({ stock, id }: Pick<StudyRow, 'stock' | 'id'>) =>
  parsed(stockShape, stock, 'study', id);

export const machineOf = (row: Omit<MachineRow, 'position' | 'found_by'>): WorkshopMachine => ({
  version: 1,
  id: row.id,
  isExample: row.is_example === 1,
  isDefault: row.is_default === 1,
  addedAt: row.added_at,
  machine: parsed(machineShape, row.body, 'machine', row.id),
  changes: parsed(machineChangesShape, row.changes, 'machine', row.id),
});

export const machineColumns = (machine: WorkshopMachine) => ({
  id: machine.id,
  is_example: machine.isExample ? 1 : 0,
  is_default: machine.isDefault ? 1 : 0,
  added_at: machine.addedAt,
  body: JSON.stringify(machine.machine),
  changes: JSON.stringify(machine.changes),
  ...machineFoundBy(machine.machine),
});

/** A study row put together with what hangs on it. */
export const studyOf = (
  row: StudyRow,
  { machine, changes }: Pick<WorkshopMachine, 'machine' | 'changes'>,
  parts: Pick<Study, 'cards' | 'events' | 'tallies' | 'orders'>,
): StoredStudy => ({
  study: {
    version: 1,
    id: row.id,
    isExample: row.is_example === 1,
    createdAt: row.created_at,
    stock: stockOf(row),
    machineId: row.machine_id,
    machine,
    machineChanges: changes,
    promise: parsed(promiseShape, row.promise, 'study', row.id),
    aim: parsed(aimShape, JSON.stringify(row.aim), 'study', row.id),
    ask: parsed(askShape, row.ask, 'study', row.id),
    ...(row.habit === null ? {} : { habit: parsed(habitShape, row.habit, 'study', row.id) }),
    ...(row.strip_of === null ? {} : { stripOf: row.strip_of }),
    ...parts,
  },
  revision: row.revision,
  touchedAt: row.touched_at,
});

export const removedStudyOf = ({ id, body, removed_at }: RemovedStudyRow): RemovedStudy => ({
  study: parsed(savedStudyShape, body, 'removed_study', id),
  removedAt: removed_at,
});

export const cardOf = ({ body, code }: { body: string; code: string }): Card =>
  parsed(cardShape, body, 'card', code);

export const orderOf = ({ body, id }: { body: string; id: string }): StartedOrder =>
  parsed(startedOrderShape, body, 'started_order', id);

export const eventOf = ({ body, id }: { body: string; id: string }): ReadingEvent =>
  parsed(readingEventShape, body, 'reading_event', id);

/** The row of something that belongs to a machine, with that machine's present description beside it. */
interface OfMachine {
  readonly machine_id: string | null;
  readonly machine: string | null;
}

export const entryOf = (row: Pick<EntryRow, 'body' | 'id'> & OfMachine): ProvenSetting => {
  const entry = parsed(provenSettingShape, row.body, 'proven_setting', row.id);
  return { ...entry, holdsFor: ofMachine(entry.holdsFor, row) };
};

export const entryColumns = (entry: ProvenSetting) => ({
  id: entry.id,
  code: entry.code,
  is_example: entry.isExample ? 1 : 0,
  kept_at: entry.keptAt,
  study_id: entry.cameFrom.studyId,
  machine_id: entry.holdsFor.machineId ?? null,
  ...entryFoundBy(entry),
  body: JSON.stringify(entry),
});

export const changeOf = ({ body, id }: { body: string; id: string }): SettingChange =>
  parsed(settingChangeShape, body, 'setting_change', id);

type TestRow = Pick<MachineTestRow, 'body' | 'id'> & OfMachine;

export const machineTestOf = <Name extends MachineTestName>(
  name: Name,
  row: TestRow,
): MachineTestOf<Name> => {
  const shape: z.ZodType<MachineTestOf<Name>> = machineTestKinds[name].shape;
  return ofMachine(parsed(shape, row.body, 'machine_test', row.id), row);
};

export const machineNameIn = ({ machine_id, machine }: OfMachine): string | undefined => {
  if (machine === null) return undefined;
  if (machine === lastNamed?.machine) return lastNamed.name;
  const { name } = parsed(machineShape, machine, 'machine', machine_id ?? '');
  lastNamed = { machine, name };
  return name;
};

/** Most rows of a list are of one machine: its description is read once. */
let lastNamed: { readonly machine: string; readonly name: string | undefined } | undefined;

/** The machine stands in a column of its own, and its name with itself: what names it here is as old as the row. */
const ofMachine = <T extends { readonly machineId?: string; readonly machine?: string }>(
  thing: T,
  { machine_id, machine }: OfMachine,
): T => {
  if (machine_id === null) return thing;
  const name = machineNameIn({ machine_id, machine });
  return {
    ...omit(thing, 'machine'),
    machineId: machine_id,
    ...(name === undefined ? {} : { machine: name }),
  } as T;
};

/** The proven setting stands in a column of its own, so that it can go without the tally being rewritten. */
export const tallyOf = (
  row: Pick<TallyRow, 'body' | 'id' | 'proven_setting_id'>,
): RecordedTally => {
  const body = parsed(recordedTallyShape, row.body, 'tally', row.id);
  return row.proven_setting_id === null
    ? body
    : { ...body, provenSettingId: row.proven_setting_id };
};

export const tallyColumns = ({ provenSettingId, ...body }: RecordedTally) => ({
  id: body.id,
  proven_setting_id: provenSettingId ?? null,
  body: JSON.stringify(body),
});
