import type { AskingPorts } from '../app/ports/ports.ts';
import { systemClock } from '../host/clock.ts';
import { randomIds } from '../host/ids.ts';
import { storePlace } from '../host/storePlace.ts';
import { commandModel } from '../host/systemModel.ts';
import { goneOrAfter } from '../served/patience.ts';
import { openStore, openStoreToRead } from '../store/openStore.ts';

/** `isOver`: the time for sums has gone. */
type Work<T> = (ports: AskingPorts, isOver: () => boolean) => Promise<T>;

/** Opens the workshop's store, does the work and closes it again. Throws what the store throws. */
export const withStore = <T>(work: Work<T>): Promise<T> => within(openStore, work);

/**
 * The same for work that changes nothing: it can be done in a folder that is read-only too.
 * `patienceMs`: all sums together may take so long; those that are not made by then are refused.
 */
export const withStoreToRead = <T>(work: Work<T>, patienceMs?: number): Promise<T> =>
  within(openStoreToRead, work, patienceMs);

const within = async <T>(
  open: typeof openStoreToRead,
  work: Work<T>,
  patienceMs?: number,
): Promise<T> => {
  const store = await open(storePlace(), systemClock.now());
  const sums = commandModel();
  const given =
    patienceMs === undefined ? undefined : goneOrAfter(new AbortController().signal, patienceMs);
  try {
    return await work(
      { store, clock: systemClock, ids: randomIds, model: sums.modelFor(given) },
      () => given?.aborted === true,
    );
  } finally {
    await sums.close();
    await store.close();
  }
};
