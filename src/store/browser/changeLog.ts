import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import { problemOf } from '../../core/problem.ts';
import { StoreError } from '../storeError.ts';

/** A statement as it was run, with its values. */
export interface LoggedStatement {
  readonly text: string;
  readonly values: readonly unknown[];
}

/** What one kept session wrote, in its order. */
export type LoggedChange = readonly LoggedStatement[];

/** The whole store after so many changes. */
interface Snapshot {
  readonly through: number;
  readonly bytes: Uint8Array;
}

/** What a reader lacks: a snapshot where the changes that it lacks are folded in one, and the changes behind that. */
export interface Lacking {
  readonly snapshot?: Snapshot;
  readonly changes: readonly LoggedChange[];
}

/**
 * What a browser keeps of a store: every change since a snapshot, numbered from 1 on without a gap. Whoever knows the changes up
 * to one number can learn the rest, and add the next one if nobody else has. Throws what the browser throws, and
 * `browser-store-gone`, `store-newer-than-program`.
 */
export interface ChangeLog {
  readonly since: (known: number) => Promise<Lacking>;
  /** Keeps a change under the next number; once it has resolved, it survives the loss of power. False: another has it already. */
  readonly add: (number: number, change: LoggedChange) => Promise<boolean>;
  /** Folds all changes in one, where `through` is still the last of them. */
  readonly fold: (snapshot: Snapshot) => Promise<void>;
  readonly close: () => void;
}

/** A build that lays the log out in another way raises it: an older one then does not open it. */
const layout = 1;

interface Layout extends DBSchema {
  readonly change: { key: number; value: LoggedChange };
  readonly snapshot: { key: 'bytes'; value: Uint8Array };
  /** `log`: which log it is, so that one which was thrown away and begun anew is not taken for it. */
  readonly state: { key: 'through' | 'log'; value: number | string };
}

type Database = IDBPDatabase<Layout>;

/** A transaction is over only when its changes are on the disk. */
const lasting = { durability: 'strict' } as const;

/** Opens the log of that name in this browser, beginning it where there is none. `newName`: a name that nothing else has. */
export const openChangeLog = async (name: string, newName: () => string): Promise<ChangeLog> => {
  let lost: StoreError | undefined;
  const gone = (): StoreError => lost ?? new StoreError(problemOf('browser-store-gone'));
  const database = await openLayout(name, {
    // A page of a newer build waits for this one to let go.
    newer: (found) => {
      lost = newerThanThis(found);
      database.close();
    },
    closed: () => {
      lost = gone();
    },
    thrownAway: () => {
      lost = gone();
      database.close();
    },
  });
  const log = await nameOf(database, newName);
  /** Work in the log that was opened, and in no other of its name. */
  const stillOurs = (named: number | string | undefined): void => {
    if (named !== log) throw gone();
  };
  /** As it is now: it may have been lost while something waited. */
  const whyLost = (): StoreError | undefined => lost;
  const guarded = async <T>(work: () => Promise<T>): Promise<T> => {
    if (lost !== undefined) throw lost;
    try {
      return await work();
    } catch (thrown) {
      throw whyLost() ?? thrown;
    }
  };
  return {
    since: (known) =>
      guarded(async () => {
        const work = database.transaction(['change', 'snapshot', 'state']);
        const [named, through] = await Promise.all([
          work.objectStore('state').get('log'),
          work.objectStore('state').get('through'),
        ]);
        stillOurs(named);
        const folded = Number(through);
        const isFolded = folded > known;
        const [bytes, changes] = await Promise.all([
          isFolded ? work.objectStore('snapshot').get('bytes') : undefined,
          work
            .objectStore('change')
            .getAll(IDBKeyRange.lowerBound(isFolded ? folded : known, true)),
        ]);
        if (!isFolded) return { changes };
        if (bytes === undefined) throw gone();
        return { snapshot: { through: folded, bytes }, changes };
      }),
    add: (number, change) =>
      guarded(async () => {
        const work = database.transaction(['change', 'state'], 'readwrite', lasting);
        const changes = work.objectStore('change');
        const [named, through, before, there] = await Promise.all([
          work.objectStore('state').get('log'),
          work.objectStore('state').get('through'),
          changes.getKey(number - 1),
          changes.getKey(number),
        ]);
        stillOurs(named);
        const isTaken = there !== undefined || Number(through) >= number;
        // Without the one before it a change means nothing: what was kept has gone.
        if (!isTaken && before === undefined && Number(through) !== number - 1) throw gone();
        await kept(work, isTaken ? [] : [changes.add(change, number)]);
        return !isTaken;
      }),
    fold: ({ through, bytes }) =>
      guarded(async () => {
        const work = database.transaction(['change', 'snapshot', 'state'], 'readwrite', lasting);
        const changes = work.objectStore('change');
        const [named, folded, behind] = await Promise.all([
          work.objectStore('state').get('log'),
          work.objectStore('state').get('through'),
          changes.getKey(IDBKeyRange.lowerBound(through, true)),
        ]);
        stillOurs(named);
        // Changes behind it may be there still, or folded by another already.
        const isOurs = behind === undefined && Number(folded) < through;
        await kept(
          work,
          isOurs
            ? [
                work.objectStore('snapshot').put(bytes, 'bytes'),
                work.objectStore('state').put(through, 'through'),
                changes.delete(IDBKeyRange.upperBound(through)),
              ]
            : [],
        );
      }),
    close: () => database.close(),
  };
};

/** Waits until a transaction is over. What undid it says more than what its steps say of that: that the disk is full, say. */
const kept = async (
  work: { readonly done: Promise<void>; readonly error: DOMException | null },
  steps: readonly Promise<unknown>[],
): Promise<void> => {
  try {
    await Promise.all([...steps, work.done]);
  } catch (thrown) {
    // A step is told of the end before the transaction itself is.
    await work.done.catch(() => undefined);
    throw work.error ?? thrown;
  }
};

const newerThanThis = (found: number): StoreError =>
  new StoreError(problemOf('store-newer-than-program', { found, known: layout }));

const openLayout = async (
  name: string,
  {
    newer,
    closed,
    thrownAway,
  }: {
    readonly newer: (found: number) => void;
    readonly closed: () => void;
    readonly thrownAway: () => void;
  },
): Promise<Database> => {
  try {
    return await openDB<Layout>(name, layout, {
      upgrade: (database) => {
        for (const store of ['change', 'snapshot', 'state'] as const)
          database.createObjectStore(store);
      },
      // Without a number it is being thrown away.
      blocking: (_own, found) => (found === null ? thrownAway() : newer(found)),
      terminated: closed,
    });
  } catch (thrown) {
    if (thrown instanceof DOMException && thrown.name === 'VersionError')
      throw newerThanThis(layout + 1);
    throw thrown;
  }
};

/** Which log this is; one that has just been begun gets its name. */
const nameOf = async (database: Database, newName: () => string): Promise<string> => {
  const work = database.transaction('state', 'readwrite', lasting);
  const there = await work.store.get('log');
  const name = there === undefined ? newName() : String(there);
  if (there === undefined) {
    await Promise.all([work.store.put(name, 'log'), work.store.put(0, 'through')]);
  }
  await work.done;
  return name;
};
