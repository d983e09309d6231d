import type { QueryClient } from '@tanstack/react-query';
import { pageApi } from '../../wire/pageApi.ts';
import type { PageStore } from './pageStore.ts';
import { queryKeys } from './queries.ts';
import type { TabMessage, Tabs } from './tabs.ts';

/** What earlier sheets taught is asked once for each screen, not at every tap on this one. */
const isHistory = ([name]: readonly unknown[]): boolean => name === queryKeys.history[0];

/** How long news is gathered before lists are asked for again. */
const gatherMs = 400;
/** A browser gives a stream up for good where it was refused one; a phone that is let in later wants one all the same. */
const betweenTriesMs = 3000;

type News = TabMessage & { readonly kind: 'news' };

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
  let source: EventSource | undefined;
  let retry: ReturnType<typeof setTimeout> | undefined;
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
    clearTimeout(retry);
    source?.close();
    source = undefined;
  };
  const open = (): void => {
    close();
    const opened = new EventSource(pageApi.live.path);
    source = opened;
    opened.onmessage = ({ data }: MessageEvent<string>) => {
      const news = newsIn(data);
      if (news.studyId !== undefined) store.noticed(news.studyId, news.revision);
      tabs.tell(news);
      refreshLists();
    };
    opened.onerror = () => {
      missedNews = true;
      if (opened.readyState === EventSource.CLOSED) retry = setTimeout(open, betweenTriesMs);
    };
    opened.onopen = () => {
      store.sendNow(missedNews ? 'afresh' : undefined);
      if (!missedNews) return;
      missedNews = false;
      store.catchUp();
      refreshLists();
      tabs.tell({ kind: 'look-again' });
    };
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

/** What our own server writes into the stream. */
const newsIn = (data: string): News => ({
  ...(JSON.parse(data) as Omit<News, 'kind'>),
  kind: 'news',
});
