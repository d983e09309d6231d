import { sql, type Kysely } from 'kysely';
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
  { sought = nothingSought, from, limit, onBed, studyId }: EntriesAsked,
): Promise<Listed<ProvenSetting>> => {
  const fits = soughtEntry(sought);
  const ofSheet =
    studyId === undefined
      ? sql<boolean>`1 = 1`
      : sql<boolean>`proven_setting.study_id = ${studyId}`;
  const asked = entryRows(db).where(fits).where(ofSheet);
  const ordered =
    onBed === undefined
      ? asked
      : asked
          .clearOrderBy()
          .orderBy(nearness(onBed), 'desc')
          .orderBy('proven_setting.kept_no', 'desc');
  const rows = await stretchOf(ordered, { from, limit }).execute();
  const { count } = await fromBook(db)
    .select(({ fn }) => fn.countAll<number | string>().as('count'))
    .where(fits)
    .where(ofSheet)
    .executeTakeFirstOrThrow();
  return { found: readEach(rows, entryOf), total: Number(count) };
};

/** For the sheet on the bed come first its material in its thickness; of those, its batch. */
const nearness = ({ material, nominalThicknessMm, batch }: Stock) => {
  const [least, most] = thicknessesAbout(nominalThicknessMm);
  return sql<number>`case
    when proven_setting.material_key = ${sameName(material)}
      and proven_setting.nominal_mm between ${least} and ${most}
    then case when proven_setting.batch_key = ${batch === undefined ? null : sameName(batch)} then 2 else 1 end
    else 0 end`;
};

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
