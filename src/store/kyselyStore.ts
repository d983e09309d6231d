import type { Kysely } from 'kysely';
import type { Store } from '../app/ports/ports.ts';
import type { Outcome } from '../core/problem.ts';
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

export interface Engine {
  readonly db: Kysely<Tables>;
  /** Turns what the engine throws into a `StoreError` where a person can do something about it. */
  readonly explain: (thrown: unknown) => unknown;
  /** Throws where what is written would be lost: the place is not there any more. */
  readonly stillThere: () => void;
}

/** The store over any engine that kysely speaks to. */
export const kyselyStore = ({ db, explain, stillThere }: Engine): Store => ({
  read: async (work) => {
    try {
      return await db
        .transaction()
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
        const outcome = await work(changeSession(transaction));
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
  close: () => db.destroy(),
});
