import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useLocation } from 'wouter';
import { api } from '../../../wire/api.ts';
import { shellText as words } from '../../../words/en/screens/shell.ts';
import { Action } from '../../parts/action/Action.tsx';
import { callOrThrow } from '../../state/call.ts';

/** One click to an invented workshop that has been at it for a while. */
export const ExampleDoor = () => {
  const [, goTo] = useLocation();
  const cache = useQueryClient();
  const open = useMutation({
    mutationFn: () => callOrThrow(api.openExample),
    onSuccess: (home) => {
      cache.setQueryData(['home'], home);
      void cache.invalidateQueries({ queryKey: ['book'] });
      goTo('/bed');
    },
  });
  return (
    <div className="actions">
      <Action kind="quiet" onPress={() => open.mutate()} isDisabled={open.isPending}>
        {words.exampleShow}
      </Action>
    </div>
  );
};
