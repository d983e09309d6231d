import { sql, type Kysely } from 'kysely';
import type { Tables } from './tables.ts';

/**
 * The tables with what names their rows, in the order in which they can be filled: what a row refers to stands before it.
 * Texts are in the order of their bytes on both engines, so that both give the rows of a table alike.
 */
const keysOf = {
  machine: ['id'],
  study: ['id'],
  card: ['study_id', 'code'],
  reading_event: ['study_id', 'id'],
  card_photo: ['study_id', 'card_code', 'side'],
  started_order: ['id'],
  proven_setting: ['id'],
  setting_photo: ['setting_id', 'subject'],
  setting_change: ['id'],
  tally: ['id'],
  machine_test: ['kind', 'id'],
  removed_study: ['id'],
  // The code that lets the next one in holds for minutes, and for where it was asked for.
  phone: ['id'],
} as const satisfies Record<Exclude<keyof Tables, 'schema_step' | 'pairing'>, readonly string[]>;

export type CopiedTable = keyof typeof keysOf;

const tables = Object.keys(keysOf) as readonly CopiedTable[];

type Cell = string | number | null;
type Row = Readonly<Record<string, Cell>>;

/** So many at once: SQLite takes no more than 32 766 values. */
const rowsAtOnce = 500;
/** Of pictures, which are large. */
const photosAtOnce = 10;

export interface RowsCopied {
  readonly table: CopiedTable;
  readonly rows: number;
}

/**
 * Copies all rows from one store into another that has the same tables and nothing in them, then reads both again and holds
 * them against each other, row by row. Both are transactions. Throws where a row differs: the caller undoes all.
 */
export const copyRows = async (
  from: Kysely<Tables>,
  to: Kysely<Tables>,
): Promise<readonly RowsCopied[]> => {
  for (const table of tables)
    for await (const rows of inPages(from, table)) await insert(to, table, rows);
  const copied: RowsCopied[] = [];
  for (const table of tables) copied.push({ table, rows: await sameRows(from, to, table) });
  return copied;
};

/** Takes every row out, those first that refer to others. */
export const deleteRows = async (db: Kysely<Tables>): Promise<void> => {
  for (const table of tables.toReversed()) await db.deleteFrom(table).execute();
};

/** Whether there is any row at all. */
export const holdsRows = async (db: Kysely<Tables>): Promise<boolean> => {
  for (const table of tables) {
    const { rows } = await sql`select 1 from ${sql.table(table)} limit 1`.execute(db);
    if (rows.length > 0) return true;
  }
  return false;
};

async function* inPages(db: Kysely<Tables>, table: CopiedTable): AsyncGenerator<readonly Row[]> {
  const keys = keysOf[table];
  const columns = sql.join(keys.map((key) => sql.ref(key)));
  const isOfPhotos = ['card_photo', 'setting_photo', 'setting_change'].includes(table);
  const atOnce = isOfPhotos ? photosAtOnce : rowsAtOnce;
  let behind = sql`1 = 1`;
  for (;;) {
    const { rows } = await sql<Row>`select * from ${sql.table(table)} where ${behind}
      order by ${columns} limit ${sql.lit(atOnce)}`.execute(db);
    const last = rows.at(-1);
    if (last === undefined) return;
    yield rows;
    behind = sql`(${columns}) > (${sql.join(keys.map((key) => last[key] ?? null))})`;
  }
}

const insert = async (db: Kysely<Tables>, table: CopiedTable, rows: readonly Row[]) => {
  const columns = Object.keys(rows[0] ?? {});
  const values = rows.map((row) => sql`(${sql.join(columns.map((name) => row[name] ?? null))})`);
  await sql`insert into ${sql.table(table)} (${sql.join(columns.map((name) => sql.ref(name)))})
    values ${sql.join(values)}`.execute(db);
};

/** How many rows a table has, all alike on both sides. */
const sameRows = async (
  from: Kysely<Tables>,
  to: Kysely<Tables>,
  table: CopiedTable,
): Promise<number> => {
  const copies = inPages(to, table);
  let counted = 0;
  for await (const rows of inPages(from, table)) {
    const { value: found } = (await copies.next()) as { readonly value?: readonly Row[] };
    rows.forEach((row, i) => {
      if (!isSameRow(row, found?.[i]))
        throw new Error(
          `${table} ${keysOf[table].map((key) => String(row[key])).join(' ')} differs`,
        );
    });
    if (found?.length !== rows.length) throw new Error(`${table} has more rows than were copied`);
    counted += rows.length;
  }
  if ((await copies.next()).done !== true)
    throw new Error(`${table} has more rows than were copied`);
  return counted;
};

const isSameRow = (row: Row, copy: Row | undefined): boolean =>
  copy !== undefined &&
  Object.keys(row).length === Object.keys(copy).length &&
  Object.entries(row).every(([name, cell]) => isSameCell(cell, copy[name]));

const isSameCell = (cell: Cell, copy: Cell | undefined): boolean => {
  // What a thing is found by holds any sign; one engine says NUL in another way.
  if (typeof cell === 'string' && typeof copy === 'string')
    return cell.replaceAll('\0', '␀') === copy.replaceAll('\0', '␀');
  return cell === copy;
};
