import { sql, type Kysely } from 'kysely';
import { gatherMachines, type OwnDescription } from '../../core/machine/gatherMachines.ts';
import { undescribedMachine } from '../../core/machine/machine.ts';
import { exampleMachine, exampleMachineId } from '../../core/virtual/exampleMachine.ts';
import { machineShape } from '../../formats/saved/machine.ts';
import type { Migration } from './migration.ts';

/**
 * Machines become things of their own. Until now each study described one for itself, and the book and the tests named
 * one: the machines that there are follow from those names. Of each figure the newest counts.
 */
export const machines: Migration = {
  number: 4,
  name: 'machines',
  statements: [
    `create table machine (
      id text primary key,
      position integer not null unique,
      is_example integer not null,
      is_default integer not null,
      added_at text not null,
      body text not null,
      changes text not null
    )`,
    `alter table study add column machine_id text references machine (id)`,
    `alter table proven_setting add column machine_id text references machine (id)`,
    `alter table machine_test add column machine_id text references machine (id)`,
  ],
  fill: async (db) => {
    for (const isExample of [0, 1]) await fillMachines(db, isExample);
  },
  after: [
    `alter table study drop column machine`,
    `create index study_by_machine on study (machine_id)`,
  ],
};

interface Found extends OwnDescription {
  readonly table: 'study' | 'proven_setting' | 'machine_test';
  readonly id: string;
  readonly since: string;
}

const fillMachines = async (db: Kysely<never>, isExample: number): Promise<void> => {
  const found = [
    ...(await ofStudies(db, isExample)),
    ...(await ofBook(db, isExample)),
    ...(await ofTests(db, isExample)),
  ];
  const gathered = gatherMachines(found, isExample === 1 ? undefined : exampleMachine);
  for (const [i, { machine, keys }] of gathered.entries()) {
    const things = found.filter(({ key }) => keys.includes(key));
    const id = isExample === 1 && i === 0 ? exampleMachineId : `machine-${things[0]?.id ?? ''}`;
    const addedAt = things.map(({ since }) => since).reduce((a, b) => (a < b ? a : b));
    await sql`insert into machine (id, position, is_example, is_default, added_at, body, changes)
      select ${id.slice(0, 64)}, coalesce(max(position), 0) + 1, ${isExample},
        ${isExample === 0 && i === 0 ? 1 : 0}, ${addedAt}, ${JSON.stringify(machine)}, '[]'
      from machine`.execute(db);
    for (const thing of things)
      await sql`update ${sql.table(thing.table)} set machine_id = ${id.slice(0, 64)}
        where id = ${thing.id}`.execute(db);
  }
};

const keyed = (thing: Omit<Found, 'key'>): Found => ({
  ...thing,
  key: `${thing.table} ${thing.id}`,
});

const ofStudies = async (db: Kysely<never>, isExample: number): Promise<readonly Found[]> => {
  const { rows } = await sql<{ id: string; created_at: string; machine: string }>`
    select id, created_at, machine from study where is_example = ${isExample}
    order by touched_at desc, id`.execute(db);
  return rows.map(({ id, created_at, machine }) =>
    keyed({ table: 'study', id, since: created_at, machine: described(machine) }),
  );
};

const ofBook = async (db: Kysely<never>, isExample: number): Promise<readonly Found[]> => {
  const { rows } = await sql<{ id: string; kept_at: string; study_id: string; body: string }>`
    select id, kept_at, study_id, body from proven_setting where is_example = ${isExample}
    order by kept_at desc, id`.execute(db);
  return rows.map(({ id, kept_at, body }) =>
    keyed({
      table: 'proven_setting',
      id,
      since: kept_at,
      machine: named(nameIn(body, 'holdsFor')),
    }),
  );
};

const ofTests = async (db: Kysely<never>, isExample: number): Promise<readonly Found[]> => {
  const { rows } = await sql<{ id: string; at: string; body: string }>`
    select id, at, body from machine_test where is_example = ${isExample}
    order by at desc, id`.execute(db);
  return rows.map(({ id, at, body }) =>
    keyed({ table: 'machine_test', id, since: at, machine: named(nameIn(body)) }),
  );
};

/** What this program cannot read describes nothing: the study stays, its machine is to be described again. */
const described = (text: string) => {
  const read = machineShape.safeParse(parsed(text));
  return read.success ? read.data : undescribedMachine;
};

const named = (name: string | undefined) =>
  name === undefined ? undescribedMachine : { ...undescribedMachine, name };

const nameIn = (body: string, inside?: string): string | undefined => {
  const whole = parsed(body);
  const part = inside === undefined ? whole : keyOf(whole, inside);
  const name = keyOf(part, 'machine');
  return typeof name === 'string' ? name : undefined;
};

const keyOf = (value: unknown, key: string): unknown =>
  typeof value === 'object' && value !== null
    ? new Map<string, unknown>(Object.entries(value)).get(key)
    : undefined;

const parsed = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
};
