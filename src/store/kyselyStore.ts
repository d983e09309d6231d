import type { Kysely } from 'kysely';
import type { Store } from '../app/ports/ports.ts';
import type { PhonesKept } from '../app/ports/phones.ts';
import type { StoredChange } from '../app/ports/storedChange.ts';
import type { Outcome } from '../core/problem.ts';
import { phonesKept } from './phonesKept.ts';
import { readSession } from './readSession.ts';
import { changeSession } from './session.ts';
import type { Tables } from './tables.ts';

/** Carries a refusal out of a transaction, so that what the session did is undone. */
class Refusal extends Error {
  readonly outcome: Outcome<never>;

  constructor(outcome: Outcome<never>) {
    super('refused');
    this.outcome = outcome;
  }
}

/** A place that is open, and what its engine does in its own way. */
export interface Engine {
  readonly db: Kysely<Tables>;
  /** As a person may read it: without a password. */
  readonly place: string;
  /** Turns what the engine throws into a `StoreError` where a person can do something about it. */
  readonly explain: (thrown: unknown) => unknown;
  /** First in the transaction of a session that changes things: waits for its turn. */
  readonly beginChange?: (transaction: Kysely<Tables>) => Promise<void>;
  /** How programs at work in one place hear of one another. Absent: they do not. */
  readonly news?: {
    readonly announce: (
      transaction: Kysely<Tables>,
      changes: readonly StoredChange[],
    ) => Promise<void>;
    readonly hear: Store['hear'];
  };
  /** Does work that one program at a time does; undefined where another is at it. Absent: one file has one lock, see there. */
  readonly onlyOne?: <T>(work: () => Promise<T>) => Promise<T | undefined>;
  /** Throws where what is written would be lost: the place is not there any more. */
  readonly stillThere: () => void;
  readonly close: () => Promise<void>;
}

/** A workshop's things, and the phones that are let in to it. */
export interface OpenedStore extends Store {
  readonly phones: PhonesKept;
}

/** The store over any engine that kysely speaks to. */
export const kyselyStore = (engine: Engine): OpenedStore => {
  const { db, explain, beginChange, news, stillThere, close } = engine;
  return {
    phones: phonesKept(engine),
    read: async (work) => {
      try {
        return await db
          .transaction()
          // All that a session reads is of one moment. SQLite's are so anyway.
          .setIsolationLevel('repeatable read')
          .setAccessMode('read only')
          .execute((transaction) => work(readSession(transaction)));
      } catch (thrown) {
        throw explain(thrown);
      }
    },
    change: async (work) => {
      try {
        stillThere();
        const kept = await db.transaction().execute(async (transaction) => {
          await beginChange?.(transaction);
          const outcome = await work({
            ...changeSession(transaction),
            announce: (changes) => news?.announce(transaction, changes) ?? Promise.resolve(),
          });
          if (!outcome.ok) throw new Refusal(outcome);
          return outcome;
        });
        // Looked at again before it is acknowledged: the place may have gone while it was written.
        stillThere();
        return kept;
      } catch (thrown) {
        if (thrown instanceof Refusal) return thrown.outcome;
        throw explain(thrown);
      }
    },
    hear: (listener) => news?.hear(listener) ?? (() => undefined),
    close,
  };
};
