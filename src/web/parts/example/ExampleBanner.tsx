import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useLocation } from 'wouter';
import { pageApi } from '../../../wire/pageApi.ts';
import { shellText as words } from '../../../words/texts.ts';
import { callOrThrow } from '../../state/call.ts';
import { queryKeys, useHome } from '../../state/queries.ts';
import { Action } from '../action/Action.tsx';
import { Notice } from '../notice/Notice.tsx';
import { pages } from '../../state/pages.ts';

/** Says that the example is open, and takes every trace of it away. */
export const ExampleBanner = () => {
  const { data: home } = useHome();
  const cache = useQueryClient();
  const [, goTo] = useLocation();
  const remove = useMutation({
    mutationFn: () => callOrThrow(pageApi.removeExample),
    onSuccess: (after) => {
      cache.setQueryData(queryKeys.home, after);
      void cache.invalidateQueries({ queryKey: queryKeys.book });
      void cache.invalidateQueries({ queryKey: queryKeys.studies });
      goTo(pages.start);
    },
  });
  if (home?.exampleOpen !== true) return null;
  return (
    <Notice tone="say">
      <div className="actions">
        <p>{home.latest?.study.isExample === false ? words.exampleBeside : words.exampleOpen}</p>
        <Action
          calls={pageApi.removeExample}
          onPress={() => remove.mutate()}
          isDisabled={remove.isPending}
        >
          {words.exampleGone}
        </Action>
      </div>
    </Notice>
  );
};
