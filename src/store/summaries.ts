import type { Kysely } from 'kysely';
import type { StudySummary } from '../app/stored.ts';
import type { Machine } from '../core/machine/machine.ts';
import { machineOf, stockOf } from './rows.ts';
import type { Tables } from './tables.ts';

/** One line a study, the last touched first. Three queries, however many studies there are. */
export const readSummaries = async (db: Kysely<Tables>): Promise<readonly StudySummary[]> => {
  const studies = await db
    .selectFrom('study')
    .select(['id', 'is_example', 'created_at', 'touched_at', 'revision', 'stock', 'machine'])
    .orderBy('touched_at', 'desc')
    .orderBy('id')
    .execute();
  const cards = await db
    .selectFrom('card')
    .select(['study_id', 'code'])
    .orderBy('position')
    .execute();
  const tallies = await db.selectFrom('tally').select(['study_id', 'id']).execute();
  const cardsOf = byStudy(cards);
  const talliesOf = byStudy(tallies);
  return studies.map((row) => ({
    ...namedMachine(machineOf(row)),
    id: row.id,
    isExample: row.is_example === 1,
    createdAt: row.created_at,
    touchedAt: row.touched_at,
    revision: row.revision,
    stock: stockOf(row),
    cardCodes: (cardsOf.get(row.id) ?? []).map(({ code }) => code),
    tallyCount: talliesOf.get(row.id)?.length ?? 0,
  }));
};

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
