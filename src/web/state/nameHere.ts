import { workshopReach } from './reach.ts';
import { browserShelf } from './browserShelf.ts';
import { keepOn } from './shelf.ts';

const key = 'throughcut.name';
/** As long as browsers keep one. */
const cookieSeconds = 400 * 24 * 3600;

/** The name that was given on this device; empty: none. */
export const nameHere = (): string => browserShelf.getItem(key) ?? '';

/**
 * Keeps the name for all that is read, counted and kept from here. A server is told it by a cookie, so that every request
 * bears it, those that were waiting too.
 */
export const keepNameHere = (name: string): void => {
  keepOn(browserShelf, key, name);
  if (!workshopReach().isServed) return;
  const value = encodeURIComponent(name);
  document.cookie = `throughcut-name=${value}; Path=/; SameSite=Strict; Max-Age=${String(cookieSeconds)}`;
};
