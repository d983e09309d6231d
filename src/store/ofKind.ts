import { sql, type Expression, type Kysely, type SqlBool } from 'kysely';
import type { StockKind } from '../app/ports/ports.ts';
import type { Tables } from './tables.ts';

type OfStock = 'study' | 'proven_setting';

/** As real or as invented, and on the same machine. */
export const isOfMachine = (
  table: OfStock,
  { isExample, machine }: Pick<StockKind, 'isExample' | 'machine'>,
): Expression<SqlBool> => {
  const real = sql<SqlBool>`${sql.ref(`${table}.is_example`)} = ${isExample ? 1 : 0}`;
  if (machine === undefined) return real;
  const column = sql.ref(`${table}.machine_id`);
  return machine.id === undefined
    ? sql<SqlBool>`${real} and ${column} is null`
    : sql<SqlBool>`${real} and ${column} = ${machine.id}`;
};

/** The same, and of the same material: its name is judged once a name, not once a row. */
export const isOfKind = async (
  db: Kysely<Tables>,
  table: OfStock,
  kind: StockKind,
): Promise<Expression<SqlBool>> => {
  const ofMachine = isOfMachine(table, kind);
  const materials = (await materialsOf(db, table, ofMachine)).filter(kind.isSameMaterial);
  return materials.length === 0
    ? sql<SqlBool>`1 = 0`
    : sql<SqlBool>`${ofMachine} and ${sql.ref(`${table}.material`)} in (${sql.join(materials)})`;
};

/**
 * Each name once, from one to the next by the index, since there are few names to thousands of rows: neither engine skips
 * along an index for DISTINCT by itself. (A loose index scan, as PostgreSQL's wiki has it.)
 */
const materialsOf = async (
  db: Kysely<Tables>,
  table: OfStock,
  ofMachine: Expression<SqlBool>,
): Promise<readonly string[]> => {
  const rows = sql.table(table);
  const { rows: names } = await sql<{ readonly material: string }>`
    with recursive name (material) as (
      select min(material) from ${rows} where ${ofMachine}
      union all
      select (select min(material) from ${rows} where ${ofMachine} and material > name.material)
        from name where name.material is not null
    )
    select material from name where material is not null`.execute(db);
  return names.map(({ material }) => material);
};
