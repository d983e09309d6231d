import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { pageTrailApi } from '../../wire/pageTrailApi.ts';
import { callOrThrow } from './call.ts';
import { queryKeys } from './queries.ts';

/** What was done to kept settings, or to one of them, the last first. */
export const useSettingTrail = (settingId: string | undefined, limit: number) =>
  useQuery({
    queryKey: [...queryKeys.book, 'changes', settingId, limit],
    queryFn: () =>
      callOrThrow(pageTrailApi.listSettingChanges, {
        query: { ...(settingId === undefined ? {} : { settingId }), limit },
      }),
  });

/** Takes one of them back. `onGone`: the setting is not in the book any more. */
export const useTakeBack = (onGone: (settingId: string) => void) => {
  const cache = useQueryClient();
  return useMutation({
    mutationFn: (changeId: string) =>
      callOrThrow(pageTrailApi.takeBackSettingChange, { params: { changeId } }),
    onSuccess: ({ change }) => {
      if (change.after === undefined) {
        // Forgotten, not asked for once more: it is gone.
        cache.removeQueries({ queryKey: queryKeys.bookEntry(change.settingId) });
        onGone(change.settingId);
      }
      void cache.invalidateQueries({ queryKey: queryKeys.home });
    },
    // What stands against it is told anew, too.
    onSettled: () => cache.invalidateQueries({ queryKey: queryKeys.book }),
  });
};
