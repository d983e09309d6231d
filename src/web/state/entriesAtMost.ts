import { browserShelf } from './browserShelf.ts';
import { keepOn } from './shelf.ts';

const key = 'throughcut.entries';

/** How many entries the control program keeps apart, as its colour trial showed; undefined where none was made. */
export const entriesAtMost = (): number | undefined => {
  const kept = Number(browserShelf.getItem(key));
  return Number.isInteger(kept) && kept > 0 ? kept : undefined;
};

export const rememberEntries = (entries: number | undefined): void => {
  if (entries === undefined) browserShelf.removeItem(key);
  else keepOn(browserShelf, key, String(entries));
};
