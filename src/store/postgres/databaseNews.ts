import { randomUUID } from 'node:crypto';
import { sql, type Kysely } from 'kysely';
import pg from 'pg';
import type { StoredChange } from '../../app/ports/storedChange.ts';
import type { Engine } from '../engine.ts';
import type { Tables } from '../tables.ts';
import type { DatabaseAddress } from './databaseAddress.ts';

/** The engine carries less than 8,000 bytes a message: many changes are told as "look at everything". */
const bytesAtMost = 7000;

/** How long to wait before the server is asked again, where the connection has gone. */
const againMs = 1000;

type Heard = (change: StoredChange) => void;

/** Tells other programs in the same workshop what was kept, by the engine's own LISTEN and NOTIFY, and hears what they tell. */
export const databaseNews = ({
  servers,
  schema,
}: DatabaseAddress): NonNullable<Engine['news']> & { readonly close: () => Promise<void> } => {
  const channel = `throughcut ${schema}`.slice(0, 63);
  /** Tells what this program said itself from what others said. */
  const self = randomUUID();
  const listeners = new Set<Heard>();
  const tell: Heard = (change) => {
    for (const listener of listeners) listener(change);
  };
  const ear = keptEar({
    servers,
    channel,
    heard: (text) => {
      const said = JSON.parse(text) as Said;
      if (said.by !== self) for (const change of said.changes) tell(change);
    },
    // What was said before nobody knows.
    againAtWork: () => {
      tell({});
    },
  });
  return {
    announce: async (transaction, changes) => {
      const whole = JSON.stringify({ by: self, changes } satisfies Said);
      const text =
        Buffer.byteLength(whole) <= bytesAtMost
          ? whole
          : JSON.stringify({ by: self, changes: [{}] } satisfies Said);
      await notify(transaction, channel, text);
    },
    hear: (listener) => {
      listeners.add(listener);
      ear.open();
      return () => {
        listeners.delete(listener);
      };
    },
    close: ear.close,
  };
};

interface Said {
  readonly by: string;
  readonly changes: readonly StoredChange[];
}

/** Part of the transaction: heard when it is kept, and not otherwise. */
const notify = async (db: Kysely<Tables>, channel: string, text: string): Promise<void> => {
  await sql`select pg_notify(${channel}, ${text})`.execute(db);
};

interface Ear {
  readonly servers: readonly string[];
  readonly channel: string;
  readonly heard: (text: string) => void;
  readonly againAtWork: () => void;
}

/** A connection of its own that listens, opened with the first listener and made again wherever it breaks. */
const keptEar = ({ servers, channel, heard, againAtWork }: Ear) => {
  let client: pg.Client | undefined;
  let waiting: NodeJS.Timeout | undefined;
  let isOpen = false;
  let tries = 0;
  const listen = async (): Promise<void> => {
    const next = new pg.Client({
      connectionString: servers[tries % servers.length] ?? '',
      keepAlive: true,
    });
    client = next;
    let isOver = false;
    const over = (): void => {
      if (isOver) return;
      isOver = true;
      void next.end().catch(() => undefined);
      if (!isOpen) return;
      tries += 1;
      waiting = setTimeout(() => void listen(), againMs);
    };
    next.on('error', over).on('end', over);
    next.on('notification', ({ payload }) => {
      if (payload !== undefined) heard(payload);
    });
    try {
      await next.connect();
      await next.query(`listen ${next.escapeIdentifier(channel)}`);
      againAtWork();
    } catch {
      over();
    }
  };
  return {
    open: (): void => {
      if (isOpen) return;
      isOpen = true;
      void listen();
    },
    close: async (): Promise<void> => {
      isOpen = false;
      clearTimeout(waiting);
      await client?.end().catch(() => undefined);
    },
  };
};
