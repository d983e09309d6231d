import type { AskingPorts, Store } from '../app/ports/ports.ts';
import { systemClock } from '../host/clock.ts';
import { dataFile, dataFolder } from '../host/dataFolder.ts';
import { randomIds } from '../host/ids.ts';
import { commandModel } from '../host/systemModel.ts';
import { openSqliteStore, openSqliteToRead, type SqliteOptions } from '../store/sqliteStore.ts';

type Work<T> = (ports: AskingPorts) => Promise<T>;

/** Opens this computer's store, does the work and closes it again. Throws what the store throws. */
export const withStore = <T>(work: Work<T>): Promise<T> => within(openSqliteStore, work);

/** The same for work that changes nothing: it can be done in a folder that is read-only too. */
export const withStoreToRead = <T>(work: Work<T>): Promise<T> => within(openSqliteToRead, work);

const within = async <T>(
  open: (options: SqliteOptions) => Promise<Store>,
  work: Work<T>,
): Promise<T> => {
  const store = await open({ file: dataFile(dataFolder()), openedAt: systemClock.now() });
  const sums = commandModel();
  try {
    return await work({ store, clock: systemClock, ids: randomIds, model: sums.modelFor() });
  } finally {
    await sums.close();
    await store.close();
  }
};
