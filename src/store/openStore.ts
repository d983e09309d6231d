import { dirname } from 'node:path';
import type { Store } from '../app/ports/ports.ts';
import type { StorePlace } from '../host/storePlace.ts';
import type { Engine } from './engine.ts';
import { kyselyStore, type OpenedStore } from './kyselyStore.ts';
import { databaseAddress } from './postgres/databaseAddress.ts';
import { openSqliteEngine, openSqliteToRead } from './sqliteStore.ts';

/** Opens the store at a place, making it where there is none. Throws `StoreError`, as the engine there does. */
export const openStore = async (place: StorePlace, openedAt: string): Promise<OpenedStore> =>
  kyselyStore(await openEngine(place, { openedAt }));

/** The same for work that changes nothing: a file is read in a folder that is read-only too. */
export const openStoreToRead = async (place: StorePlace, openedAt: string): Promise<Store> =>
  place.kind === 'file'
    ? openSqliteToRead({ file: place.file, openedAt })
    : openStore(place, openedAt);

/** The same for work on the rows themselves. */
export const openEngine = async (
  place: StorePlace,
  options: { readonly openedAt: string; readonly alone?: boolean },
): Promise<Engine> => {
  if (place.kind === 'file') return openSqliteEngine({ file: place.file, ...options });
  // The driver is loaded by those who use it: whoever works with a file starts without it.
  const { openPostgresEngine } = await import('./postgres/postgresEngine.ts');
  return openPostgresEngine({ url: place.url, ...options });
};

/** The place as a person may read it: the folder, or the database without its password. */
export const placeInWords = (place: StorePlace): string =>
  place.kind === 'file' ? dirname(place.file) : databaseAddress(place.url).place;
