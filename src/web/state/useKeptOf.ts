import { useBook, type BookEntry } from './queries.ts';

/** So many settings are kept of a sheet at most that a screen speaks of. */
const mostKept = 20;

/** The settings that were kept of a sheet, the last first; undefined while nobody can say. */
export const useKeptOf = (studyId: string): readonly BookEntry[] | undefined => {
  const { data } = useBook({ studyId, limit: mostKept });
  return data?.entries.toSorted((a, b) => (a.entry.keptAt < b.entry.keptAt ? 1 : -1));
};
