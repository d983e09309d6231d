import type { Kysely } from 'kysely';
import type { StudySummary } from '../app/stored.ts';
import type { Machine } from '../core/machine/machine.ts';
import { machineOf, stockOf, type ReadEach } from './rows.ts';
import type { StudyRow, Tables } from './tables.ts';

type HeadRow = Pick<
  StudyRow,
  'id' | 'is_example' | 'created_at' | 'touched_at' | 'revision' | 'stock' | 'machine'
>;

const heads = (db: Kysely<Tables>) =>
  db
    .selectFrom('study')
    .select(['id', 'is_example', 'created_at', 'touched_at', 'revision', 'stock', 'machine']);

/** One line a study, the last touched first. Three queries, however many studies there are. */
export const readSummaries = async (
  db: Kysely<Tables>,
  readEach: ReadEach,
): Promise<readonly StudySummary[]> => {
  const rows = await heads(db).orderBy('touched_at', 'desc').orderBy('id').execute();
  const cards = await db
    .selectFrom('card')
    .select(['study_id', 'code'])
    .orderBy('position')
    .execute();
  const tallies = await db.selectFrom('tally').select(['study_id', 'id']).execute();
  const cardsOf = byStudy(cards);
  const talliesOf = byStudy(tallies);
  return readEach(rows, (row) =>
    summaryOf(row, cardsOf.get(row.id) ?? [], talliesOf.get(row.id)?.length ?? 0),
  );
};

/** The study last touched that can be read, the workshop's own before the example's. */
export const readLatest = async (
  db: Kysely<Tables>,
  readEach: ReadEach,
): Promise<StudySummary | undefined> => {
  for (let skip = 0; ; skip += 1) {
    const row = await heads(db)
      .orderBy('is_example')
      .orderBy('touched_at', 'desc')
      .orderBy('id')
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
    const [latest] = readEach([row], () => summaryOf(row, cards, tallies.count));
    if (latest !== undefined) return latest;
  }
};

const summaryOf = (
  row: HeadRow,
  cards: readonly { readonly code: string }[],
  tallyCount: number,
): StudySummary => ({
  ...namedMachine(machineOf(row)),
  id: row.id,
  isExample: row.is_example === 1,
  createdAt: row.created_at,
  touchedAt: row.touched_at,
  revision: row.revision,
  stock: stockOf(row),
  cardCodes: cards.map(({ code }) => code),
  tallyCount,
});

const namedMachine = ({ name }: Machine): Pick<StudySummary, 'machine'> =>
  name === undefined ? {} : { machine: name };

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
