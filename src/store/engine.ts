import type { Kysely } from 'kysely';
import type { Store } from '../app/ports/ports.ts';
import type { StoredChange } from '../app/ports/storedChange.ts';
import type { Tables } from './tables.ts';

/** A place that is open, and what its engine does in its own way. */
export interface Engine {
  readonly db: Kysely<Tables>;
  /** As a person may read it: without a password. */
  readonly place: string;
  /** Turns what the engine throws into a `StoreError` where a person can do something about it. */
  readonly explain: (thrown: unknown) => unknown;
  /** First in the transaction of a session that changes things: waits for its turn. */
  readonly beginChange?: (transaction: Kysely<Tables>) => Promise<void>;
  /** Reads by a connection of its own, beside those that wait for one another. Absent: there are several anyway, or only one. */
  readonly beside?: <T>(work: (db: Kysely<Tables>) => Promise<T>) => Promise<T>;
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
