import { useQuery } from '@tanstack/react-query';
import { pageWatchApi } from '../../../wire/pageLaterApi.ts';
import type { ReplyOf } from '../../../wire/route.ts';
import type { watchApi } from '../../../wire/watch.ts';
import { callOrThrow } from '../../state/call.ts';
import { queryKeys } from '../../state/queries.ts';

/** What the server says of a watched setting. */
export type Watched = ReplyOf<typeof watchApi.watchEntry>;

/** Asked anew whenever a count was added to the entry, or a strip was read meanwhile. */
export const useWatch = (id: string) =>
  useQuery({
    queryKey: [...queryKeys.bookEntry(id), 'watch'],
    queryFn: () => callOrThrow(pageWatchApi.watchEntry, { params: { id } }),
  });
