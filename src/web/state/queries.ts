import type { ProvenSetting } from '../../core/book/provenSetting.ts';
import type { Standing } from '../../core/standing/standing.ts';
import type { Stock } from '../../core/stock/stock.ts';
import type { RecordedTally } from '../../core/study/study.ts';
import type { HistoryWish } from '../../core/study/historyWish.ts';
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import type { ProblemInWords } from '../../words/inWords.ts';
import { pageApi } from '../../wire/pageApi.ts';
import { callOrThrow } from './call.ts';

/** A proven setting with its orders, and how it stands. */
export interface BookEntry {
  readonly entry: ProvenSetting;
  readonly tallies: readonly RecordedTally[];
  readonly standing: Standing;
  /** Codes of kept settings from which it differs only by air. */
  readonly onlyByAir?: readonly string[];
  /** Where another sheet lies on the bed than the one it was kept from: in what that differs, if in anything. */
  readonly onBed?: { readonly stock: Stock; readonly differs: readonly ProblemInWords[] };
}

/** Names under which what the server said is remembered; whoever changes something forgets them. */
export const queryKeys = {
  home: ['home'],
  studies: ['studies'],
  machines: ['machines'],
  book: ['book'],
  bookEntry: (id: string) => ['book', 'entry', id] as const,
  history: ['history'],
  pairing: ['pairing'],
  backups: ['backups'],
  meterings: ['meterings'],
  focusTests: ['focus-tests'],
} as const;

export const useHome = () =>
  useQuery({
    queryKey: queryKeys.home,
    queryFn: () => callOrThrow(pageApi.home),
    // Without the server the first screen works too: it is not kept waiting.
    retry: false,
  });

/** How the backups stand; nothing where nobody answers. */
export const useBackups = () =>
  useQuery({
    queryKey: queryKeys.backups,
    queryFn: () => callOrThrow(pageApi.backups),
    retry: false,
  });

/**
 * What earlier sheets of the same material taught, asked once as long as a screen shows the study: an answer does not move
 * because someone reads another card meanwhile. Where the server is away nothing is waited for.
 */
export const useHistory = (wish: HistoryWish) => {
  const { isExample, ...rest } = wish;
  const query = { ...rest, of: isExample ? ('example' as const) : ('workshop' as const) };
  return useQuery({
    queryKey: [...queryKeys.history, query],
    queryFn: () => callOrThrow(pageApi.gatherHistory, { query }),
    staleTime: Infinity,
    gcTime: 0,
    retry: false,
  });
};

/** What of a list is asked for: a page of it at least. */
export interface ListWish {
  readonly text?: string;
  readonly limit: number;
}

/** `like`: only other sheets of the same material as this one. */
export const useStudies = (wish: ListWish & { readonly like?: string }) =>
  useQuery({
    queryKey: [...queryKeys.studies, wish],
    queryFn: () => callOrThrow(pageApi.listStudies, { query: { ...wish } }),
    // What stands there stays until more of it has come.
    placeholderData: keepPreviousData,
  });

/** `studyId`: only what was kept from this sheet. */
export const useBook = (wish: ListWish & { readonly studyId?: string }) =>
  useQuery({
    queryKey: [...queryKeys.book, wish],
    queryFn: () => callOrThrow(pageApi.searchBook, { query: { ...wish } }),
    placeholderData: keepPreviousData,
  });

/** What was kept of a sheet's material on its machine. */
export const useKeptLike = (studyId: string, isWanted: boolean) =>
  useQuery({
    queryKey: [...queryKeys.book, 'like', studyId],
    queryFn: () => callOrThrow(pageApi.keptLike, { query: { studyId } }),
    enabled: isWanted,
  });

/** `isReady`: not while something is being sent that may be this very entry. */
export const useBookEntry = (id: string, isReady = true) =>
  useQuery({
    queryKey: queryKeys.bookEntry(id),
    queryFn: () => callOrThrow(pageApi.getEntry, { params: { id } }),
    enabled: isReady,
  });

export const usePairing = () =>
  useQuery({ queryKey: queryKeys.pairing, queryFn: () => callOrThrow(pageApi.pairing) });

export const useMeterings = () =>
  useQuery({ queryKey: queryKeys.meterings, queryFn: () => callOrThrow(pageApi.listMeterings) });

export const useFocusTests = () =>
  useQuery({ queryKey: queryKeys.focusTests, queryFn: () => callOrThrow(pageApi.listFocusTests) });
