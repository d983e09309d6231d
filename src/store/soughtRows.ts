import {
  sql,
  type Expression,
  type RawBuilder,
  type SelectQueryBuilder,
  type SqlBool,
} from 'kysely';
import type { Stretch } from '../app/ports/ports.ts';
import { thicknessesAbout, type Sought } from '../core/search/sought.ts';

/** Sheets that fit all that is sought: by their words, by the name of their machine, or by the code of one of their cards. */
export const soughtSheet = (sought: Sought): Expression<SqlBool> =>
  fitsAll(
    'study',
    sought,
    (word) => sql<SqlBool>`exists (
    select 1 from card where card.study_id = study.id and lower(card.code) = ${word})`,
  );

/** Kept settings that fit all that is sought. */
export const soughtEntry = (sought: Sought): Expression<SqlBool> =>
  fitsAll('proven_setting', sought);

/** `orElse`: by what else a word may fit. Rows must have their machine beside them. */
const fitsAll = (
  table: 'study' | 'proven_setting',
  { words, thicknessesMm }: Sought,
  orElse?: (word: string) => RawBuilder<SqlBool>,
): RawBuilder<SqlBool> => {
  const text = sql`(${sql.ref(`${table}.found_by`)} || ' ' || coalesce(machine.found_by, ''))`;
  const byWord = words.map((word) => {
    const has = sql<SqlBool>`${text} like ${`%${asItIs(word)}%`} escape '!'`;
    return orElse === undefined ? has : sql<SqlBool>`(${has} or ${orElse(word)})`;
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

/** A word with nothing in it that stands for something else. */
const asItIs = (word: string): string => word.replace(/[!%_]/g, '!$&');

/** SQLite wants a limit where there is an offset: more rows than that are in no store. */
const noLimit = 1e15;

export const stretchOf = <DB, TB extends keyof DB, O>(
  query: SelectQueryBuilder<DB, TB, O>,
  { from = 0, limit = noLimit }: { readonly [K in keyof Stretch]: Stretch[K] | undefined },
): SelectQueryBuilder<DB, TB, O> => query.limit(limit).offset(from);
