import { useBook, type BookEntry } from './queries.ts';

/** The settings that were kept of a sheet, the last first; undefined while nobody can say. */
export const useKeptOf = (studyId: string): readonly BookEntry[] | undefined => {
  const { data } = useBook('');
  return data?.entries
    .filter(({ entry }) => entry.cameFrom.studyId === studyId)
    .toSorted((a, b) => (a.entry.keptAt < b.entry.keptAt ? 1 : -1));
};
