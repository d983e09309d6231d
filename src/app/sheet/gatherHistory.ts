import type { EarlierSheet } from '../../core/study/earlierSheet.ts';
import type { HistoryWish } from '../../core/study/historyWish.ts';
import type { Ports } from '../ports/ports.ts';
import { historyIn } from '../shared/history.ts';

/** What the workshop's other studies of the same material on the same machine know of their sheets, as `historyIn` says. */
export const gatherHistory = (
  { store }: Pick<Ports, 'store'>,
  wish: HistoryWish,
): Promise<readonly EarlierSheet[]> => store.read((session) => historyIn(session, wish));
