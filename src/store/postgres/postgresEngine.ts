import { Kysely, PostgresDialect, sql } from 'kysely';
import { problemOf } from '../../core/problem.ts';
import type { Engine } from '../engine.ts';
import { migrate, type Migrating } from '../migrate.ts';
import { migrations as allMigrations } from '../migrations/all.ts';
import type { Migration } from '../migrations/migration.ts';
import { StoreError } from '../storeError.ts';
import type { Tables } from '../tables.ts';
import { databaseAddress, type DatabaseAddress } from './databaseAddress.ts';
import { databaseNews } from './databaseNews.ts';
import { explainPostgres } from './explainPostgres.ts';
import { programName, writableServer } from './writableServer.ts';

export interface PostgresOptions {
  /** As `databaseAddress` reads it. */
  readonly url: string;
  /** ISO 8601, UTC: noted beside each migration that runs now. */
  readonly openedAt: string;
  /** Only tests say otherwise. */
  readonly migrations?: readonly Migration[];
  /** Nobody else may be at work in it meanwhile. */
  readonly alone?: boolean;
}

/**
 * Opens a workshop's store on a PostgreSQL server, making its schema and tables where there are none, and brings them up to
 * date. Several programs may work on one store at once: what changes it is done one after another, as in the embedded one.
 * Throws `StoreError`: not an address, not reached, not let in, no such database, newer than this program, not ours, no
 * changes taken.
 */
export const openPostgresEngine = async (options: PostgresOptions): Promise<Engine> => {
  const address = databaseAddress(options.url);
  const explain = (thrown: unknown): unknown => explainPostgres(thrown, address.place);
  const db = postgresTables(address);
  try {
    await prepare(db, address, options);
    if (options.alone === true) await checkAlone(db, address);
    const news = databaseNews(address);
    return {
      db,
      place: address.place,
      explain,
      beginChange: waitForTurn,
      news,
      onlyOne: (work) => holding(db, work),
      stillThere: () => undefined,
      close: async () => {
        await news.close();
        await db.destroy();
      },
    };
  } catch (thrown) {
    await db.destroy();
    throw explain(thrown);
  }
};

const postgresTables = ({ servers, schema }: DatabaseAddress): Kysely<Tables> =>
  new Kysely<Tables>({ dialect: new PostgresDialect({ pool: writableServer(servers, schema) }) });

/** Whoever changes the store waits here for whoever began before: then each sees all that was kept before it. */
const waitForTurn = async (transaction: Kysely<Tables>): Promise<void> => {
  await sql`select pg_advisory_xact_lock(hashtext(current_schema()), 0)`.execute(transaction);
};

/** Holds a lock of its own kind as long as the work takes; the server gives it back where the connection breaks. */
const holding = <T>(db: Kysely<Tables>, work: () => Promise<T>): Promise<T | undefined> =>
  db.connection().execute(async (connection) => {
    const { rows } = await sql<{ readonly held: boolean }>`
      select pg_try_advisory_lock(hashtext(current_schema()), 1) as held`.execute(connection);
    if (rows[0]?.held !== true) return undefined;
    try {
      return await work();
    } finally {
      await sql`select pg_advisory_unlock(hashtext(current_schema()), 1)`
        .execute(connection)
        .catch(() => undefined);
    }
  });

const prepare = async (
  db: Kysely<Tables>,
  address: DatabaseAddress,
  { openedAt, migrations = allMigrations }: PostgresOptions,
): Promise<void> => {
  // Looked at first: not every user who may work in a schema may make one, or change its tables.
  const there = await tablesIn(db, address.schema);
  if (there === undefined) await makeSchema(db, address.schema);
  if (there?.includes('schema_step') === true && (await isUpToDate(db, migrations))) return;
  const migrating: Migrating = {
    begin: async (transaction) => {
      await waitForTurn(transaction);
      await checkSchemaOurs(transaction, address, migrations);
    },
    asWritten: inPostgres,
  };
  await migrate(db, openedAt, { migrations, ...migrating });
};

/** Where another program makes it in the same moment, `if not exists` does not spare this one the server's refusal. */
const makeSchema = async (db: Kysely<Tables>, schema: string): Promise<void> => {
  try {
    await sql`create schema if not exists ${sql.id(schema)}`.execute(db);
  } catch (thrown) {
    const code = thrown instanceof Error && 'code' in thrown ? thrown.code : undefined;
    if (code !== uniqueViolation && code !== duplicateSchema) throw thrown;
  }
};

/** "PostgreSQL Error Codes", appendix A of its documentation. */
const uniqueViolation = '23505';
const duplicateSchema = '42P06';

/** Throws `store-server-busy` where another program of this kind is connected to the same workshop. */
const checkAlone = async (
  db: Kysely<Tables>,
  { schema, place }: DatabaseAddress,
): Promise<void> => {
  const { rows } = await sql`
    select 1 from pg_stat_activity where datname = current_database()
      and application_name = ${programName(schema)} and pid <> pg_backend_pid()`.execute(db);
  if (rows.length > 0) throw new StoreError(problemOf('store-server-busy', { place }));
};

/** The names of the schema's tables; none: there is no such schema. */
const tablesIn = async (
  db: Kysely<Tables>,
  schema: string,
): Promise<readonly string[] | undefined> => {
  const { rows } = await sql<{ readonly name: string | null }>`
    select tablename as name from pg_namespace
    left join pg_tables on schemaname = nspname where nspname = ${schema}`.execute(db);
  if (rows.length === 0) return undefined;
  return rows.flatMap(({ name }) => name ?? []);
};

const isUpToDate = async (
  db: Kysely<Tables>,
  migrations: readonly Migration[],
): Promise<boolean> => {
  const done = await db.selectFrom('schema_step').select(['number', 'name']).execute();
  return (
    done.length === migrations.length &&
    migrations.every((step) =>
      done.some(({ number, name }) => number === step.number && name === step.name),
    )
  );
};

/** Tables of others, or steps that are not ours, are left alone. Throws `store-schema-not-ours`. */
const checkSchemaOurs = async (
  db: Kysely<Tables>,
  { schema, place }: DatabaseAddress,
  migrations: readonly Migration[],
): Promise<void> => {
  const names = (await tablesIn(db, schema)) ?? [];
  if (names.length === 0) return;
  const foreign = new StoreError(problemOf('store-schema-not-ours', { place }));
  if (!names.includes('schema_step')) throw foreign;
  const done = await db.selectFrom('schema_step').select(['number', 'name']).execute();
  const nameOf = new Map(migrations.map(({ number, name }) => [number, name]));
  if (done.some(({ number, name }) => (nameOf.get(number) ?? name) !== name)) throw foreign;
};

/**
 * The same statement for this engine: texts stand in the order of their bytes, whatever language the server was set up for,
 * as they do in the embedded store.
 */
const inPostgres = (statement: string): string =>
  statement.replace(/\btext\b(?=[\s,)]|$)/g, 'text collate "C"');
