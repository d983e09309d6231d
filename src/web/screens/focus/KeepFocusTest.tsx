import { useMutation, useQueryClient } from '@tanstack/react-query';
import type { UnkeptFocusTest } from '../../../core/machine/focusTest.ts';
import { api } from '../../../wire/api.ts';
import { focusText as words } from '../../../words/en/screens/focus.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import { callOrThrow } from '../../state/call.ts';
import { newId } from '../../state/newId.ts';
import { queryKeys } from '../../state/queries.ts';

export interface KeepFocusTestProps {
  /** Absent: nothing was found yet. */
  readonly test: UnkeptFocusTest | undefined;
  readonly onKept: () => void;
}

/** Keeps the test with its date. */
export const KeepFocusTest = ({ test, onKept }: KeepFocusTestProps) => {
  const cache = useQueryClient();
  const keep = useMutation({
    mutationFn: (kept: UnkeptFocusTest) =>
      callOrThrow(api.recordFocusTest, {
        body: { ...kept, id: newId(), at: new Date().toISOString() },
      }),
    onSuccess: () => {
      onKept();
      void cache.invalidateQueries({ queryKey: queryKeys.focusTests });
    },
  });
  return (
    <div className="stack">
      <div className="actions">
        <Action
          kind="strong"
          isDisabled={test === undefined || keep.isPending}
          onPress={() => {
            if (test !== undefined) keep.mutate(test);
          }}
        >
          {words.keep}
        </Action>
      </div>
      {keep.isError ? (
        <Notice tone="stop">
          <p>{keep.error.message}</p>
        </Notice>
      ) : null}
      {keep.isSuccess && test === undefined ? <p role="status">{words.kept}</p> : null}
    </div>
  );
};
