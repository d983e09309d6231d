import type { QueryClient } from '@tanstack/react-query';
import { api, liveEvent } from '../../wire/api.ts';
import type { Keeper } from './keeper.ts';
import { queryKeys } from './queries.ts';

/** What earlier sheets taught is asked once for each screen, not at every tap on this one. */
const isHistory = ([name]: readonly unknown[]): boolean => name === queryKeys.history[0];

/** How long news is gathered before lists are asked for again. */
const gatherMs = 400;

/** Hears of every change that the server stores, so that the desk shows what the phone taps. */
export const listenLive = (keeper: Keeper, cache: QueryClient): void => {
  const source = new EventSource(api.live.path);
  let gathering = false;
  let lost = false;
  const refreshLists = (): void => {
    if (gathering) return;
    gathering = true;
    setTimeout(() => {
      gathering = false;
      void cache.invalidateQueries({ predicate: ({ queryKey }) => !isHistory(queryKey) });
    }, gatherMs);
  };
  source.onmessage = ({ data }: MessageEvent<string>) => {
    const read = liveEvent.safeParse(JSON.parse(data));
    if (!read.success) return;
    const { studyId, revision } = read.data;
    if (studyId !== undefined) keeper.noticed(studyId, revision);
    refreshLists();
  };
  source.onerror = () => {
    lost = true;
  };
  source.onopen = () => {
    keeper.sendNow();
    if (!lost) return;
    lost = false;
    keeper.catchUp();
    refreshLists();
  };
};
