import { sql, type Expression, type Kysely, type SelectQueryBuilder, type SqlBool } from 'kysely';
import type { EntriesAsked, Listed, StockKind } from '../app/ports/ports.ts';
import type { ProvenSetting } from '../core/book/provenSetting.ts';
import { nothingSought, thicknessesAbout } from '../core/search/sought.ts';
import type { Stock } from '../core/stock/stock.ts';
import { entryFoundBy, sameName } from './foundBy.ts';
import { isOfKind, isOfMachine } from './ofKind.ts';
import { entryOf, type ReadEach } from './rows.ts';
import { soughtEntry, stretchOf } from './soughtRows.ts';
import type { Tables } from './tables.ts';

/** The last kept first. */
export const entryRows = (db: Kysely<Tables>) =>
  fromBook(db)
    .select([
      'proven_setting.id',
      'proven_setting.body',
      'proven_setting.machine_id',
      'machine.body as machine',
    ])
    .orderBy('proven_setting.kept_no', 'desc');

const fromBook = (db: Kysely<Tables>) =>
  db.selectFrom('proven_setting').leftJoin('machine', 'machine.id', 'proven_setting.machine_id');

/** A stretch of the book; only what stands in it is read. */
export const listEntries = async (
  db: Kysely<Tables>,
  readEach: ReadEach,
  { sought = nothingSought, from = 0, limit, onBed, studyId }: EntriesAsked,
): Promise<Listed<ProvenSetting>> => {
  const ofSheet =
    studyId === undefined
      ? sql<SqlBool>`1 = 1`
      : sql<SqlBool>`proven_setting.study_id = ${studyId}`;
  const fits = sql<SqlBool>`${soughtEntry(sought)} and ${ofSheet}`;
  const total = await countEntries(db, fits);
  if (onBed === undefined) {
    const rows = await stretchOf(entryRows(db).where(fits), { from, limit }).execute();
    return { found: readEach(rows, entryOf), total };
  }
  // In two pieces, each by its index: put in order as one, the whole book would be read for a page of it.
  const near = sql<SqlBool>`${fits} and ${isNear(onBed)}`;
  const nearCount = await countEntries(db, near);
  const nearRows =
    from >= nearCount
      ? []
      : await nearestFirst(
          entryRows(db).where('proven_setting.id', 'in', (eb) =>
            // By themselves, so that what is put in order are names and not whole settings.
            stretchOf(
              nearestFirst(eb.selectFrom('proven_setting').select('id').where(near), onBed),
              {
                from,
                limit,
              },
            ),
          ),
          onBed,
        ).execute();
  const left = limit === undefined ? undefined : limit - nearRows.length;
  const rest =
    left === 0
      ? []
      : await stretchOf(entryRows(db).where(sql<SqlBool>`${fits} and not (${isNear(onBed)})`), {
          from: Math.max(0, from - nearCount),
          limit: left,
        }).execute();
  return { found: readEach([...nearRows, ...rest], entryOf), total };
};

const countEntries = async (db: Kysely<Tables>, fits: Expression<SqlBool>): Promise<number> => {
  const { count } = await db
    .selectFrom('proven_setting')
    .select(({ fn }) => fn.countAll<number | string>().as('count'))
    .where(fits)
    .executeTakeFirstOrThrow();
  return Number(count);
};

/** For the sheet on the bed come first its material in its thickness; of those, its batch. */
const isNear = ({ material, nominalThicknessMm }: Stock) => {
  const [least, most] = thicknessesAbout(nominalThicknessMm);
  return sql<SqlBool>`proven_setting.material_key = ${sameName(material)}
    and proven_setting.nominal_mm between ${least} and ${most}`;
};

/** Its batch, then the rest; in each the last kept first. */
const nearestFirst = <DB, TB extends keyof DB, O>(
  rows: SelectQueryBuilder<DB, TB, O>,
  { batch }: Stock,
): SelectQueryBuilder<DB, TB, O> =>
  rows
    .clearOrderBy()
    .orderBy(
      sql`case when proven_setting.batch_key = ${batch === undefined ? null : sameName(batch)} then 1 else 0 end`,
      'desc',
    )
    .orderBy(sql`proven_setting.kept_no`, 'desc');

/** Those of one material on one machine, the last kept first. */
export const entriesOfKind = async (
  db: Kysely<Tables>,
  readEach: ReadEach,
  { limit, ...kind }: StockKind & { readonly limit: number },
): Promise<readonly ProvenSetting[]> => {
  const rows = await entryRows(db)
    .where(await isOfKind(db, 'proven_setting', kind))
    .limit(limit)
    .execute();
  return readEach(rows, entryOf);
};

/** Those of the very same stock that differ from it only by air. */
export const entriesOnlyByAir = async (
  db: Kysely<Tables>,
  readEach: ReadEach,
  entry: ProvenSetting,
): Promise<readonly ProvenSetting[]> => {
  const { material_key, batch_key, nominal_mm, setting_key, air_key } = entryFoundBy(entry);
  const rows = await entryRows(db)
    .where(
      isOfMachine('proven_setting', {
        isExample: entry.isExample,
        machine: { id: entry.holdsFor.machineId },
      }),
    )
    .where('proven_setting.material_key', '=', material_key)
    .where('proven_setting.nominal_mm', '=', nominal_mm)
    .where('proven_setting.setting_key', '=', setting_key)
    .where('proven_setting.batch_key', '=', batch_key)
    .where('proven_setting.air_key', '!=', air_key)
    // Few: in whatever order, they are found by their index.
    .clearOrderBy()
    .execute();
  return readEach(rows, entryOf);
};
