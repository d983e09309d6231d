import type { CautionAct } from '../../words/shape/caution.ts';

const key = 'throughcut.cautions-seen';

/** Where the browser gives no room, the page itself remembers. */
const here = new Set<string>();

/**
 * The session rule: the cautions of an act stand in full where the act is first met in a session of the browser, and as a line
 * afterwards. A session ends when the tab is closed.
 */
export const seenThisSession = (act: CautionAct): boolean => {
  if (here.has(act)) return true;
  try {
    return (sessionStorage.getItem(key) ?? '').split(' ').includes(act);
  } catch {
    return false;
  }
};

export const haveSeen = (acts: readonly CautionAct[]): void => {
  for (const act of acts) here.add(act);
  try {
    const before = (sessionStorage.getItem(key) ?? '').split(' ');
    sessionStorage.setItem(key, [...new Set([...before, ...acts])].join(' ').trim());
  } catch {
    // Told again in full on the next page is no harm.
  }
};
