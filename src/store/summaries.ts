import { sql, type Kysely, type SqlBool } from 'kysely';
import type { Listed, SheetKind, SheetsAsked } from '../app/ports/ports.ts';
import type { StudySummary } from '../app/ports/stored.ts';
import { nothingSought } from '../core/search/sought.ts';
import { isOfKind } from './ofKind.ts';
import { machineNameIn, stockOf, type ReadEach } from './rows.ts';
import { soughtSheet, stretchOf } from './soughtRows.ts';
import type { StudyRow, Tables } from './tables.ts';

type HeadRow = Pick<
  StudyRow,
  | 'id'
  | 'is_example'
  | 'created_at'
  | 'touched_at'
  | 'revision'
  | 'stock'
  | 'machine_id'
  | 'strip_of'
> & { readonly machine: string | null };

const heads = (db: Kysely<Tables>) =>
  db
    .selectFrom('study')
    .leftJoin('machine', 'machine.id', 'study.machine_id')
    .select([
      'study.id',
      'study.is_example',
      'study.created_at',
      'study.touched_at',
      'study.revision',
      'study.stock',
      'study.machine_id',
      'study.strip_of',
      'machine.body as machine',
    ]);

/** One line a study, the last touched first. Three queries, however many studies there are. */
export const readSummaries = async (
  db: Kysely<Tables>,
  readEach: ReadEach,
): Promise<readonly StudySummary[]> =>
  withCounts(db, readEach, await heads(db).orderBy('study.touched_no', 'desc').execute());

/** A stretch of the same. It reads what the stretch holds, and counts the rest. */
export const listSheets = async (
  db: Kysely<Tables>,
  readEach: ReadEach,
  { sought = nothingSought, from, limit, kind }: SheetsAsked,
): Promise<Listed<StudySummary>> => {
  const fits =
    kind === undefined
      ? soughtSheet(sought)
      : sql<SqlBool>`${soughtSheet(sought)} and study.id != ${kind.except}
          and ${await isOfKind(db, 'study', kind)}`;
  const rows = await stretchOf(heads(db).where(fits), { from, limit })
    .orderBy('study.touched_no', 'desc')
    .execute();
  const found = await withCounts(db, readEach, rows);
  const { count } = await db
    .selectFrom('study')
    .select(({ fn }) => fn.countAll<number | string>().as('count'))
    .where(fits)
    .executeTakeFirstOrThrow();
  return { found, total: Number(count) };
};

/** One sheet, as the list has it. */
export const readSheet = async (
  db: Kysely<Tables>,
  readEach: ReadEach,
  id: string,
): Promise<StudySummary | undefined> => {
  const rows = await heads(db).where('study.id', '=', id).execute();
  return (await withCounts(db, readEach, rows))[0];
};

/** More than these are counted together with all others: an engine takes no more names at once. */
const mostNamed = 1000;

/** The rows with the codes of their cards and the count of their tallies: two queries. */
const withCounts = async (
  db: Kysely<Tables>,
  readEach: ReadEach,
  rows: readonly HeadRow[],
): Promise<readonly StudySummary[]> => {
  if (rows.length === 0) return [];
  const ids = rows.map(({ id }) => id);
  const among =
    ids.length > mostNamed ? sql<SqlBool>`1 = 1` : sql<SqlBool>`study_id in (${sql.join(ids)})`;
  const cards = await db
    .selectFrom('card')
    .select(['study_id', 'code'])
    .where(among)
    .orderBy('position')
    .execute();
  const tallies = await db
    .selectFrom('tally')
    .select(({ fn }) => ['study_id', fn.countAll<number | string>().as('count')])
    .where(among)
    .groupBy('study_id')
    .execute();
  const cardsOf = byStudy(cards);
  const countOf = new Map(tallies.map(({ study_id, count }) => [study_id, Number(count)]));
  return readEach(rows, (row) =>
    summaryOf(row, readEach, {
      cards: cardsOf.get(row.id) ?? [],
      tallyCount: countOf.get(row.id) ?? 0,
    }),
  );
};

/** Names of the sheets of one kind, the last touched first. The material is judged once a name, not once a sheet. */
export const sheetsOfKind = async (
  db: Kysely<Tables>,
  { except, thicknessMm, begunSince, limit, ...kind }: SheetKind,
): Promise<readonly string[]> => {
  let asked = db
    .selectFrom('study')
    .select('id')
    .where(await isOfKind(db, 'study', kind))
    .where('id', '!=', except);
  if (begunSince !== undefined) asked = asked.where('created_at', '>=', begunSince);
  if (thicknessMm !== undefined) {
    const thick = sql<number>`coalesce(measured_mm, nominal_mm)`;
    asked = asked.where(thick, '>=', thicknessMm.least).where(thick, '<=', thicknessMm.most);
  }
  const rows = await asked.orderBy('touched_no', 'desc').limit(limit).execute();
  return rows.map(({ id }) => id);
};

/** The study last put on the bed that can be read, the workshop's own before the example's. */
export const readOnBed = async (
  db: Kysely<Tables>,
  readEach: ReadEach,
): Promise<StudySummary | undefined> =>
  (await lastOnBed(db, readEach, 0)) ?? (await lastOnBed(db, readEach, 1));

/** By an index: it costs the same however many sheets there are. */
const lastOnBed = async (
  db: Kysely<Tables>,
  readEach: ReadEach,
  isExample: 0 | 1,
): Promise<StudySummary | undefined> => {
  for (let skip = 0; ; skip += 1) {
    const row = await heads(db)
      .where('study.is_example', '=', isExample)
      .where('study.on_bed_no', '>', 0)
      .orderBy('study.on_bed_no', 'desc')
      .limit(1)
      .offset(skip)
      .executeTakeFirst();
    if (row === undefined) return undefined;
    const [onBed] = await withCounts(db, readEach, [row]);
    if (onBed !== undefined) return onBed;
  }
};

const summaryOf = (
  row: HeadRow,
  readEach: ReadEach,
  {
    cards,
    tallyCount,
  }: { readonly cards: readonly { readonly code: string }[]; readonly tallyCount: number },
): StudySummary => {
  // A machine that cannot be read is noted, and hides none of its sheets.
  const [name] = readEach([row], machineNameIn);
  return {
    ...(name === undefined ? {} : { machine: name }),
    ...(row.strip_of === null ? {} : { stripOf: row.strip_of }),
    machineId: row.machine_id,
    id: row.id,
    isExample: row.is_example === 1,
    createdAt: row.created_at,
    touchedAt: row.touched_at,
    revision: row.revision,
    stock: stockOf(row),
    cardCodes: cards.map(({ code }) => code),
    tallyCount,
  };
};

const byStudy = <R extends { readonly study_id: string }>(
  rows: readonly R[],
): ReadonlyMap<string, readonly R[]> => {
  const groups = new Map<string, R[]>();
  for (const row of rows) {
    const group = groups.get(row.study_id);
    if (group === undefined) groups.set(row.study_id, [row]);
    else group.push(row);
  }
  return groups;
};
