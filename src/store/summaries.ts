import type { Kysely } from 'kysely';
import type { StudySummary } from '../app/stored.ts';
import { machineNameIn, stockOf, type ReadEach } from './rows.ts';
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
): Promise<readonly StudySummary[]> => {
  const rows = await heads(db).orderBy('study.touched_no', 'desc').execute();
  const cards = await db
    .selectFrom('card')
    .select(['study_id', 'code'])
    .orderBy('position')
    .execute();
  const tallies = await db.selectFrom('tally').select(['study_id', 'id']).execute();
  const cardsOf = byStudy(cards);
  const talliesOf = byStudy(tallies);
  return readEach(rows, (row) =>
    summaryOf(row, readEach, {
      cards: cardsOf.get(row.id) ?? [],
      tallyCount: talliesOf.get(row.id)?.length ?? 0,
    }),
  );
};

/** The study last put on the bed that can be read, the workshop's own before the example's. */
export const readOnBed = async (
  db: Kysely<Tables>,
  readEach: ReadEach,
): Promise<StudySummary | undefined> => {
  for (let skip = 0; ; skip += 1) {
    const row = await heads(db)
      .where('study.on_bed_no', 'is not', null)
      .orderBy('study.is_example')
      .orderBy('study.on_bed_no', 'desc')
      .limit(1)
      .offset(skip)
      .executeTakeFirst();
    if (row === undefined) return undefined;
    const cards = await db
      .selectFrom('card')
      .select('code')
      .where('study_id', '=', row.id)
      .orderBy('position')
      .execute();
    const tallies = await db
      .selectFrom('tally')
      .select(({ fn }) => fn.countAll<number>().as('count'))
      .where('study_id', '=', row.id)
      .executeTakeFirstOrThrow();
    const [onBed] = readEach([row], () =>
      summaryOf(row, readEach, { cards, tallyCount: tallies.count }),
    );
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

const byStudy = <R extends { readonly study_id: string | null }>(
  rows: readonly R[],
): ReadonlyMap<string | null, readonly R[]> => {
  const groups = new Map<string | null, R[]>();
  for (const row of rows) {
    const group = groups.get(row.study_id);
    if (group === undefined) groups.set(row.study_id, [row]);
    else group.push(row);
  }
  return groups;
};
