import type Database from 'better-sqlite3';
import type { SqliteDatabase } from 'kysely';

/** So many statements are kept prepared: the program has fewer, but for lists whose length is in the statement. */
const mostKept = 200;

/** The same database, whose statements are prepared once from `keep` on: the schema must not change any more. */
export const preparedOnce = (
  database: Database.Database,
): SqliteDatabase & { readonly keep: () => void } => {
  const kept = new Map<string, ReturnType<SqliteDatabase['prepare']>>();
  let isKeeping = false;
  const prepare: SqliteDatabase['prepare'] = (text) => {
    const before = kept.get(text);
    if (before !== undefined) return before;
    const statement = database.prepare(text);
    if (!isKeeping) return statement;
    if (kept.size >= mostKept) kept.clear();
    kept.set(text, statement);
    return statement;
  };
  return {
    prepare,
    close: () => {
      kept.clear();
      database.close();
    },
    keep: () => {
      isKeeping = true;
    },
  };
};
