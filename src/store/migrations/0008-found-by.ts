import { sql, type Kysely } from 'kysely';
import { machineShape } from '../../formats/saved/machine.ts';
import { provenSettingShape } from '../../formats/saved/provenSetting.ts';
import { stockShape } from '../../formats/saved/stock.ts';
import { entryFoundBy, machineFoundBy, stockFoundBy } from '../foundBy.ts';
import type { Migration } from './migration.ts';

/**
 * What sheets and kept settings are searched, ordered and narrowed by stands in columns of its own, so that a list of
 * thousands is not read to show fifty. A row that cannot be read keeps empty columns: no search finds it, every list does.
 */
export const foundByColumns: Migration = {
  number: 8,
  name: 'found-by',
  statements: [
    `alter table machine add column found_by text not null default ''`,
    ...(['study', 'proven_setting'] as const).flatMap((table) => [
      `alter table ${table} add column found_by text not null default ''`,
      `alter table ${table} add column material text not null default ''`,
      `alter table ${table} add column material_key text not null default ''`,
      `alter table ${table} add column batch_key text not null default ''`,
      `alter table ${table} add column nominal_mm double precision not null default 0`,
      `alter table ${table} add column measured_mm double precision`,
    ]),
    `alter table proven_setting add column setting_key text not null default ''`,
    `alter table proven_setting add column air_key text not null default ''`,
    // All that is asked of a sheet of one kind: the sheets themselves need not be looked at.
    `create index study_by_kind on study
      (is_example, machine_id, material, touched_no, created_at, nominal_mm, measured_mm, id)`,
    `create index proven_setting_by_kind on proven_setting (is_example, machine_id, material)`,
    `create index proven_setting_by_stock on proven_setting (material_key, nominal_mm, setting_key, batch_key)`,
    `create index proven_setting_by_study on proven_setting (study_id, kept_no)`,
  ],
  fill: async (db) => {
    await fillFrom(db, 'machine', 'body', (text) => ({
      ...machineFoundBy(machineShape.parse(text)),
    }));
    await fillFrom(db, 'study', 'stock', (text) => ({ ...stockFoundBy(stockShape.parse(text)) }));
    await fillFrom(db, 'proven_setting', 'body', (text) => ({
      ...entryFoundBy(provenSettingShape.parse(text)),
    }));
  },
};

type Columns = Readonly<Record<string, string | number | null>>;

const fillFrom = async (
  db: Kysely<never>,
  table: 'machine' | 'study' | 'proven_setting',
  column: 'body' | 'stock',
  columnsOf: (read: unknown) => Columns,
): Promise<void> => {
  const { rows } = await sql<{ id: string; text: string }>`
    select id, ${sql.ref(column)} as text from ${sql.table(table)}`.execute(db);
  for (const { id, text } of rows) {
    const columns = readOrNone(text, columnsOf);
    if (columns === undefined) continue;
    const set = Object.entries(columns).map(([name, value]) => sql`${sql.ref(name)} = ${value}`);
    await sql`update ${sql.table(table)} set ${sql.join(set)} where id = ${id}`.execute(db);
  }
};

const readOrNone = (text: string, columnsOf: (read: unknown) => Columns): Columns | undefined => {
  try {
    return columnsOf(JSON.parse(text));
  } catch {
    return undefined;
  }
};
