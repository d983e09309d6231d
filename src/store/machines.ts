import type { Kysely } from 'kysely';
import type { StudyRevised } from '../app/ports/ports.ts';
import type { WorkshopMachine } from '../core/machine/workshopMachine.ts';
import { machineColumns, machineOf, type ReadEach } from './rows.ts';
import type { Tables } from './tables.ts';

/** As they were added. */
export const readMachines = async (
  db: Kysely<Tables>,
  readEach: ReadEach,
): Promise<readonly WorkshopMachine[]> =>
  readEach(await db.selectFrom('machine').selectAll().orderBy('position').execute(), machineOf);

export const readMachine = async (
  db: Kysely<Tables>,
  id: string,
): Promise<WorkshopMachine | undefined> => {
  const row = await db.selectFrom('machine').selectAll().where('id', '=', id).executeTakeFirst();
  return row === undefined ? undefined : machineOf(row);
};

/** How many rows name it. */
export const machineUse = async (db: Kysely<Tables>, id: string): Promise<number> => {
  const counts = await Promise.all(
    (['study', 'proven_setting', 'machine_test'] as const).map((table) =>
      db
        .selectFrom(table)
        .select(({ fn }) => fn.countAll<number | string>().as('rows'))
        .where('machine_id', '=', id)
        .executeTakeFirstOrThrow(),
    ),
  );
  return counts.reduce((sum, { rows }) => sum + Number(rows), 0);
};

/** Writes a machine anew. Its studies say other things now: their revisions rise, which is no touch. */
export const replaceMachine = async (
  db: Kysely<Tables>,
  machine: WorkshopMachine,
): Promise<readonly StudyRevised[]> => {
  const { id, ...columns } = machineColumns(machine);
  const before = await db
    .selectFrom('machine')
    .select(['body', 'changes'])
    .where('id', '=', id)
    .executeTakeFirst();
  await db.updateTable('machine').set(columns).where('id', '=', id).execute();
  if (before?.body === columns.body && before.changes === columns.changes) return [];
  const revised = await db
    .updateTable('study')
    .set((eb) => ({ revision: eb('revision', '+', 1) }))
    .where('machine_id', '=', id)
    .returning(['id', 'revision'])
    .execute();
  return revised.map((row) => ({ studyId: row.id, revision: row.revision }));
};
