import { browserShelf } from './browserShelf.ts';

/** How long the machine said that something took, kept in this browser so that nothing is asked twice. */
const keyOf = (what: string): string => `throughcut.took.${what}`;

/** In s; undefined where nobody said. */
export const measuredTimeOf = (what: string): number | undefined => {
  try {
    const seconds = Number(browserShelf.getItem(keyOf(what)) ?? NaN);
    return seconds > 0 ? seconds : undefined;
  } catch {
    return undefined;
  }
};

export const keepMeasuredTime = (what: string, seconds: number | undefined): void => {
  try {
    if (seconds === undefined) browserShelf.removeItem(keyOf(what));
    else browserShelf.setItem(keyOf(what), String(seconds));
  } catch {
    // It is asked again next time.
  }
};
