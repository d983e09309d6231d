import {
  sql,
  type Expression,
  type RawBuilder,
  type SelectQueryBuilder,
  type SqlBool,
} from 'kysely';
import type { Stretch } from '../app/ports/ports.ts';
import { thicknessesAbout, type Sought } from '../core/search/sought.ts';

/** As cards are named; a word of another form is the code of none. */
const codeAsTyped = /^[a-z0-9]{4}$/;

/**
 * Sheets that fit all that is sought: by their words, by the name of their machine, by the code or the note of one of their
 * cards, or by the name of a job.
 */
export const soughtSheet = (sought: Sought): Expression<SqlBool> =>
  fitsAll('study', sought, (word) => [
    ofOwnWords('card', word),
    ofOwnWords('started_order', word),
    ...(codeAsTyped.test(word)
      ? [sql<SqlBool>`study.id in (select study_id from card where code = ${word.toUpperCase()})`]
      : []),
  ]);

/** Those without words are left out by name: an index has the others, and a list of thousands reads no more than them. */
const ofOwnWords = (table: 'card' | 'started_order', word: string): RawBuilder<SqlBool> =>
  sql<SqlBool>`study.id in (select study_id from ${sql.table(table)} where found_by <> '' and ${has(`${table}.found_by`, word)})`;

/** Kept settings that fit all that is sought. */
export const soughtEntry = (sought: Sought): Expression<SqlBool> =>
  fitsAll('proven_setting', sought, () => []);

/**
 * `orElse`: by what else a word may fit. Machines and cards are looked for once a question, not once a row: a list of
 * thousands is gone through for each.
 */
const fitsAll = (
  table: 'study' | 'proven_setting',
  { words, thicknessesMm }: Sought,
  orElse: (word: string) => readonly RawBuilder<SqlBool>[],
): RawBuilder<SqlBool> => {
  const byWord = words.map((word) => {
    const ways = [
      has(`${table}.found_by`, word),
      sql<SqlBool>`${sql.ref(`${table}.machine_id`)} in (select id from machine where ${has('machine.found_by', word)})`,
      ...orElse(word),
    ];
    return sql<SqlBool>`(${sql.join(ways, sql` or `)})`;
  });
  const byThickness = thicknessesMm.map((mm) => {
    const [least, most] = thicknessesAbout(mm);
    const isAbout = (column: string) =>
      sql<SqlBool>`${sql.ref(`${table}.${column}`)} between ${least} and ${most}`;
    return sql<SqlBool>`(${isAbout('nominal_mm')} or ${isAbout('measured_mm')})`;
  });
  const all = [...byWord, ...byThickness];
  return all.length === 0 ? sql<SqlBool>`1 = 1` : sql<SqlBool>`${sql.join(all, sql` and `)}`;
};

const has = (column: string, word: string): RawBuilder<SqlBool> =>
  sql<SqlBool>`${sql.ref(column)} like ${`%${asItIs(word)}%`} escape '!'`;

/** A word with nothing in it that stands for something else. */
const asItIs = (word: string): string => word.replace(/[!%_]/g, '!$&');

/** SQLite wants a limit where there is an offset: more rows than that are in no store. */
const noLimit = 1e15;

export const stretchOf = <DB, TB extends keyof DB, O>(
  query: SelectQueryBuilder<DB, TB, O>,
  { from = 0, limit = noLimit }: { readonly [K in keyof Stretch]: Stretch[K] | undefined },
): SelectQueryBuilder<DB, TB, O> => query.limit(limit).offset(from);
