import pg from 'pg';
import type { PostgresPool, PostgresPoolClient } from 'kysely';
import { ServerTakesNoChanges } from './serverTakesNoChanges.ts';

/** Longer than this no server is waited for, until it says something or lets somebody in. */
const patienceMs = 10_000;

/** Connections a program: what is done in each is short. */
const connectionsAtMost = 10;

/**
 * Connections to the one of these servers that takes what is written. Where it goes away or becomes a copy of another, the
 * others are asked; what was in mid-transaction then throws.
 */
export const writableServer = (servers: readonly string[], schema: string): PostgresPool => {
  const pools = servers.map((connectionString) => poolOf(connectionString, schema));
  let leading = 0;
  return {
    connect: async () => {
      let last: unknown = new ServerTakesNoChanges();
      for (let asked = 0; asked < pools.length; asked += 1) {
        const at = (leading + asked) % pools.length;
        try {
          const client = await pools[at]?.connect();
          if (client === undefined) continue;
          if (pools.length === 1 || (await takesWriting(client))) {
            leading = at;
            return withoutNul(client);
          }
          client.release();
          last = new ServerTakesNoChanges();
        } catch (thrown) {
          last = thrown;
        }
      }
      throw last;
    },
    end: async () => {
      await Promise.all(pools.map((pool) => pool.end()));
    },
  };
};

/** How the server lists those who work in one workshop. No name there is longer than 63 bytes. */
export const programName = (schema: string): string => `throughcut ${schema}`.slice(0, 63);

const poolOf = (connectionString: string, schema: string): pg.Pool => {
  const pool = new pg.Pool({
    connectionString,
    max: connectionsAtMost,
    connectionTimeoutMillis: patienceMs,
    keepAlive: true,
    application_name: programName(schema),
    // What is acknowledged is on the disk, whatever the server is set to; nobody waits for ever for another's work.
    options: `-c search_path=${schema} -c synchronous_commit=on -c lock_timeout=${String(patienceMs)} -c idle_in_transaction_session_timeout=60000`,
  });
  // A connection that breaks says so twice: to what is being asked by it, which is where it is heard, and here.
  pool.on('error', () => undefined);
  pool.on('connect', (client) => client.on('error', () => undefined));
  return pool;
};

const takesWriting = async (client: pg.PoolClient): Promise<boolean> => {
  try {
    const { rows } = await client.query<{ readonly transaction_read_only: string }>(
      'show transaction_read_only',
    );
    return rows[0]?.transaction_read_only === 'off';
  } catch (thrown) {
    client.release(true);
    throw thrown;
  }
};

/** The engine holds any sign but NUL. It stands raw only in what things are found by: bodies are JSON, which escapes it. */
const withoutNul = (client: pg.PoolClient): PostgresPoolClient => ({
  // No cursor is ever asked for: the other of its two forms is not needed.
  query: ((text: string, values: readonly unknown[]) =>
    client.query(text, values.map(nulSaid))) as unknown as PostgresPoolClient['query'],
  release: (destroy) => {
    client.release(destroy);
  },
});

const nulSaid = (value: unknown): unknown =>
  typeof value === 'string' ? value.replaceAll('\0', '␀') : value;
