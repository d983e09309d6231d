import type { QueryClient } from '@tanstack/react-query';
import type { PageStore } from './pageStore.ts';
import { queryKeys } from './queries.ts';
import { keepRoleHere } from './role.ts';
import { workshopReach } from './reach.ts';
import type { Tabs } from './tabs.ts';

/** What earlier sheets taught is asked once for each screen, not at every tap on this one. */
const isHistory = ([name]: readonly unknown[]): boolean => name === queryKeys.history[0];

/** How long news is gathered before lists are asked for again. */
const gatherMs = 400;

export interface Listening {
  readonly store: PageStore;
  /** What the server said of lists. */
  readonly cache: QueryClient;
  readonly tabs: Tabs;
}

/**
 * Hears of every change that the server stores, so that the desk shows what the phone taps. One tab of the browser
 * listens, and tells the others.
 */
export const listenLive = ({ store, cache, tabs }: Listening): void => {
  let stop: (() => void) | undefined;
  let gathering = false;
  let missedNews = false;

  const refreshLists = (): void => {
    if (gathering) return;
    gathering = true;
    setTimeout(() => {
      gathering = false;
      void cache.invalidateQueries({ predicate: ({ queryKey }) => !isHistory(queryKey) });
    }, gatherMs);
  };
  const close = (): void => {
    stop?.();
    stop = undefined;
  };
  const open = (): void => {
    close();
    stop = workshopReach().hear({
      news: ({ role, ...change }) => {
        if (role !== undefined) {
          keepRoleHere(role);
          return;
        }
        if (change.studyId !== undefined) store.noticed(change.studyId, change.revision);
        tabs.tell({ ...change, kind: 'news' });
        refreshLists();
      },
      missed: () => {
        missedNews = true;
      },
      open: () => {
        store.sendNow(missedNews ? 'afresh' : undefined);
        if (!missedNews) return;
        missedNews = false;
        store.catchUp();
        refreshLists();
        tabs.tell({ kind: 'look-again' });
      },
    });
  };

  tabs.hear(({ kind }) => {
    if (kind === 'news' || kind === 'look-again') refreshLists();
    if (kind === 'let-in') void cache.invalidateQueries();
  });
  tabs.onFirst((isFirst, tookOver) => {
    missedNews ||= tookOver;
    if (isFirst) open();
    else close();
  });
};
