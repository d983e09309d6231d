import { useMutation, useQueryClient } from '@tanstack/react-query';
import { findFocus } from '../../../core/focus/findFocus.ts';
import { pageApi } from '../../../wire/pageApi.ts';
import { focusText as words } from '../../../words/texts.ts';
import { SureAction } from '../../parts/action/SureAction.tsx';
import { EarlierList } from '../../parts/earlier/EarlierList.tsx';
import { callOrThrow } from '../../state/call.ts';
import { queryKeys, useFocusTests } from '../../state/queries.ts';

/** The focus tests of this machine, the latest first. */
export const EarlierFocusTests = ({ machineId }: { readonly machineId: string }) => {
  const { data, isPending, refetch } = useFocusTests();
  const cache = useQueryClient();
  const remove = useMutation({
    mutationFn: (id: string) => callOrThrow(pageApi.removeFocusTest, { params: { id } }),
    onSettled: () => cache.invalidateQueries({ queryKey: queryKeys.focusTests }),
  });
  const own = data?.tests.filter((test) => test.machineId === machineId);
  return (
    <EarlierList words={words} tests={own} isPending={isPending} onAgain={() => void refetch()}>
      {(test) => {
        const found = findFocus(test);
        return (
          <>
            <p>
              <b>{new Date(test.at).toLocaleDateString()}</b>{' '}
              {words.lineOf(test, found.ok ? found.value : undefined)}
            </p>
            <SureAction
              calls={pageApi.removeFocusTest}
              ask={words.removeAsk}
              onPress={() => remove.mutate(test.id)}
            >
              {words.remove}
            </SureAction>
          </>
        );
      }}
    </EarlierList>
  );
};
