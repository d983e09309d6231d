import { problemOf } from '../core/problem.ts';
import type { StorePlace } from '../host/storePlace.ts';
import { copyRows, deleteRows, holdsRows, type RowsCopied } from './copyRows.ts';
import type { Engine } from './engine.ts';
import { openEngine } from './openStore.ts';
import { putCopy } from './putCopy.ts';
import { StoreError } from './storeError.ts';

export interface MoveOptions {
  readonly from: StorePlace;
  readonly to: StorePlace;
  /** ISO 8601, UTC. */
  readonly at: string;
}

export interface Moved {
  /** Where it is now, as a person may read it. */
  readonly place: string;
  readonly rows: readonly RowsCopied[];
}

/**
 * Carries a whole workshop to another place, whatever engine is at either, and holds what arrived against what left, row by
 * row, before it is kept. Nobody else may be at work at either place. What was there stays. Throws `StoreError`: what opening
 * throws, `move-target-not-empty`, `move-same-place`.
 */
export const moveStore = async ({ from, to, at }: MoveOptions): Promise<Moved> => {
  if (nameOf(from) === nameOf(to)) throw new StoreError(problemOf('move-same-place'));
  return betweenEngines({ from, to, at, alone: true }, (read, target) =>
    changing(target, async (rows) => {
      if (await holdsRows(rows))
        throw new StoreError(problemOf('move-target-not-empty', { place: target.place }));
      return { place: target.place, rows: await copyRows(read, rows) };
    }),
  );
};

/** A whole copy of a place, as it is at one moment, in another that holds nothing; others may go on at work. */
export const copyStore = (options: MoveOptions): Promise<readonly RowsCopied[]> =>
  betweenEngines(options, (read, target) => changing(target, (rows) => copyRows(read, rows)));

/**
 * Puts what one place holds in the place of what the other held, in one step; what that was is copied into a file before,
 * where there was anything. Who is at work there is told to look at everything again.
 */
export const replaceStore = ({
  aside,
  ...options
}: MoveOptions & { readonly aside: string }): Promise<Moved & { readonly putAside: boolean }> =>
  betweenEngines(options, (read, target) =>
    changing(target, async (rows) => {
      const putAside = await holdsRows(rows);
      if (putAside)
        await putCopy({ file: aside, to: aside }, async (half) => {
          const place = { kind: 'file', file: half } as const;
          await withEngine({ place, at: options.at }, (file) =>
            changing(file, (empty) => copyRows(rows, empty)),
          );
        });
      await deleteRows(rows);
      const copied = await copyRows(read, rows);
      await target.news?.announce(rows, [{}]);
      return { place: target.place, rows: copied, putAside };
    }),
  );

const nameOf = (place: StorePlace): string => (place.kind === 'file' ? place.file : place.url);

const betweenEngines = <T>(
  { from, to, at, alone = false }: MoveOptions & { readonly alone?: boolean },
  work: (read: Engine['db'], target: Engine) => Promise<T>,
): Promise<T> =>
  withEngine({ place: from, at, alone }, (source) =>
    withEngine({ place: to, at, alone }, (target) =>
      source.db
        .transaction()
        .setIsolationLevel('repeatable read')
        .setAccessMode('read only')
        .execute((read) => work(read, target)),
    ),
  );

const withEngine = async <T>(
  { place, at, alone = false }: { place: StorePlace; at: string; alone?: boolean },
  work: (engine: Engine) => Promise<T>,
): Promise<T> => {
  const engine = await openEngine(place, { openedAt: at, alone });
  try {
    return await work(engine);
  } catch (thrown) {
    throw engine.explain(thrown);
  } finally {
    await engine.close();
  }
};

const changing = <T>(
  { db, beginChange }: Engine,
  work: (rows: Engine['db']) => Promise<T>,
): Promise<T> =>
  db.transaction().execute(async (transaction) => {
    await beginChange?.(transaction);
    return work(transaction);
  });
