import type { Kysely } from 'kysely';
import type { ReadSession, Store } from '../app/ports/ports.ts';
import type { PhonesKept } from '../app/ports/phones.ts';
import type { Outcome } from '../core/problem.ts';
import type { Engine } from './engine.ts';
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

/** A workshop's things, and the phones that are let in to it. */
export interface OpenedStore extends Store {
  readonly phones: PhonesKept;
}

/** The store over any engine that kysely speaks to. */
export const kyselyStore = (engine: Engine): OpenedStore => {
  const { db, explain, beginChange, beside, news, stillThere, close } = engine;
  return {
    phones: phonesKept(engine),
    read: async (work) => {
      try {
        return await readIn(db, work);
      } catch (thrown) {
        throw explain(thrown);
      }
    },
    readLong: async (work) => {
      try {
        if (beside === undefined) return await readIn(db, work);
        return await beside((own) => readIn(own, work));
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

/** All that a session reads is of one moment. SQLite's are so anyway. */
const readIn = <T>(db: Kysely<Tables>, work: (session: ReadSession) => Promise<T>): Promise<T> =>
  db
    .transaction()
    .setIsolationLevel('repeatable read')
    .setAccessMode('read only')
    .execute((transaction) => work(readSession(transaction)));
