import type { Ports } from '../app/ports.ts';
import { systemClock } from '../host/clock.ts';
import { dataFile, dataFolder } from '../host/dataFolder.ts';
import { randomIds } from '../host/ids.ts';
import { openSqliteStore } from '../store/sqliteStore.ts';

/** Opens this computer's store, does the work and closes it again. Throws what the store throws. */
export const withStore = async <T>(work: (ports: Ports) => Promise<T>): Promise<T> => {
  const openedAt = systemClock.now();
  const store = await openSqliteStore({ file: dataFile(dataFolder()), openedAt });
  try {
    return await work({ store, clock: systemClock, ids: randomIds });
  } finally {
    await store.close();
  }
};
