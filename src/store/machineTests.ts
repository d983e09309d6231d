import type { Kysely } from 'kysely';
import type { MachineTest, MachineTestName } from '../core/machineTests.ts';
import type { Tables } from './tables.ts';
import { nextPosition } from './nextPosition.ts';

/** What stands in the column `kind`. */
const stored = (name: MachineTestName): string => name.replace(/-test$/, '');

/** The rows of one kind, the latest first; of one moment, the last stored first. */
export const machineTestRows = (db: Kysely<Tables>, name: MachineTestName) =>
  db
    .selectFrom('machine_test')
    .leftJoin('machine', 'machine.id', 'machine_test.machine_id')
    .select([
      'machine_test.id',
      'machine_test.body',
      'machine_test.machine_id',
      'machine.body as machine',
    ])
    .where('machine_test.kind', '=', stored(name))
    .orderBy('machine_test.at', 'desc')
    .orderBy('machine_test.position', 'desc');

/** Adds one behind those that are there. */
export const insertMachineTest = async (
  db: Kysely<Tables>,
  name: MachineTestName,
  test: MachineTest,
): Promise<void> => {
  const next = await nextPosition(db, 'machine_test');
  await db
    .insertInto('machine_test')
    .values({
      id: test.id,
      position: next,
      kind: stored(name),
      at: test.at,
      is_example: test.isExample === true ? 1 : 0,
      machine_id: test.machineId ?? null,
      body: JSON.stringify(test),
    })
    .execute();
};

export const deleteMachineTest = async (
  db: Kysely<Tables>,
  name: MachineTestName,
  id: string,
): Promise<void> => {
  await db
    .deleteFrom('machine_test')
    .where('kind', '=', stored(name))
    .where('id', '=', id)
    .execute();
};
