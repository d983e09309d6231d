import { statSync } from 'node:fs';
import type { StorePlace } from './storePlace.ts';

/** What lay at a workshop's place before it was opened: something, an empty data file, or none. */
export type FoundAtPlace = 'kept' | 'empty' | 'none';

/** Looks at the data file alone; a database's tables are for its server to tell of. */
export const foundAtPlace = (place: StorePlace): FoundAtPlace => {
  if (place.kind === 'database') return 'kept';
  try {
    const size = statSync(place.file, { throwIfNoEntry: false })?.size;
    return size === undefined ? 'none' : size === 0 ? 'empty' : 'kept';
  } catch {
    // Whoever opens it says what is in its way.
    return 'kept';
  }
};
