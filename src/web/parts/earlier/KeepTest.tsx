import { testVerbs } from '../../../wire/addresses.ts';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { newId } from '../../state/newId.ts';
import { Action } from '../action/Action.tsx';
import { Notice } from '../notice/Notice.tsx';
import { Said } from '../said/Said.tsx';

/** What a kept test has beside what was measured. */
export interface Dated {
  readonly id: string;
  readonly at: string;
}

export interface KeepTestProps<T extends object> {
  readonly words: { readonly keep: string; readonly kept: string };
  /** Absent: nothing was measured yet. */
  readonly test: T | undefined;
  readonly record: (kept: T & Dated) => Promise<unknown>;
  /** The list that it comes to stand in. */
  readonly queryKey: readonly string[];
  readonly onKept: () => void;
}

/** Keeps what was measured with its date. */
export const KeepTest = <T extends object>(props: KeepTestProps<T>) => {
  const { words, test, record, queryKey, onKept } = props;
  const cache = useQueryClient();
  const keep = useMutation({
    mutationFn: (kept: T) => record({ ...kept, id: newId(), at: new Date().toISOString() }),
    onSuccess: () => {
      onKept();
      void cache.invalidateQueries({ queryKey });
    },
  });
  return (
    <>
      <Action
        kind="strong"
        calls={testVerbs.record}
        keepsTyped
        isDisabled={test === undefined || keep.isPending}
        onPress={() => {
          if (test !== undefined) keep.mutate(test);
        }}
      >
        {words.keep}
      </Action>
      {keep.isError ? (
        <Notice tone="stop">
          <p>{keep.error.message}</p>
        </Notice>
      ) : null}
      {keep.isSuccess && test === undefined ? <Said what="done">{words.kept}</Said> : null}
    </>
  );
};
