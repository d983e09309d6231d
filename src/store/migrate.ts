import { problemOf } from '../core/problem.ts';
import { sql, type Kysely } from 'kysely';
import { migrations as allMigrations } from './migrations/all.ts';
import type { Migration } from './migrations/migration.ts';
import { StoreError } from './storeError.ts';
import type { Tables } from './tables.ts';

/** What an engine does in its own way. */
export interface Migrating {
  /** First in the transaction: waits for others who do the same, looks whether the place is ours. */
  readonly begin?: (transaction: Kysely<Tables>) => Promise<void>;
  /** A statement as this engine wants it. */
  readonly asWritten?: (statement: string) => string;
}

/**
 * Brings the schema up to date: every missing step in one transaction, so that a failed start leaves the old schema
 * whole. Throws `store-newer-than-program` where a newer program has been at work: this one would not understand it.
 */
export const migrate = (
  db: Kysely<Tables>,
  appliedAt: string,
  {
    migrations = allMigrations,
    begin,
    asWritten = (statement) => statement,
  }: Migrating & { readonly migrations?: readonly Migration[] | undefined } = {},
): Promise<void> =>
  db.transaction().execute(async (transaction) => {
    await begin?.(transaction);
    const run = async (statement: string): Promise<void> => {
      await sql.raw(asWritten(statement)).execute(transaction);
    };
    await run(`create table if not exists schema_step (
      number integer primary key, name text not null, applied_at text not null
    )`);
    const applied = await transaction.selectFrom('schema_step').select('number').execute();
    const done = new Set(applied.map(({ number }) => number));
    const known = Math.max(0, ...migrations.map(({ number }) => number));
    const newest = Math.max(0, ...done);
    if (newest > known)
      throw new StoreError(problemOf('store-newer-than-program', { found: newest, known }));
    for (const { number, name, statements, fill, after = [] } of migrations) {
      if (done.has(number)) continue;
      for (const statement of statements) await run(statement);
      await fill?.(transaction as unknown as Kysely<never>);
      for (const statement of after) await run(statement);
      await transaction
        .insertInto('schema_step')
        .values({ number, name, applied_at: appliedAt })
        .execute();
    }
  });
