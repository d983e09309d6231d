import { useMutation, useQueryClient } from '@tanstack/react-query';
import type { UnkeptBedTest } from '../../../core/bed/bedTest.ts';
import { api } from '../../../wire/api.ts';
import { cornersText as words } from '../../../words/en/screens/corners.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import { callOrThrow } from '../../state/call.ts';
import { newId } from '../../state/newId.ts';
import { bedTestsKey } from './useBedTests.ts';

export interface KeepCornersProps {
  /** Absent: nothing was read yet. */
  readonly test: UnkeptBedTest | undefined;
  readonly onKept: () => void;
}

/** Keeps what was read with its date. */
export const KeepCorners = ({ test, onKept }: KeepCornersProps) => {
  const cache = useQueryClient();
  const keep = useMutation({
    mutationFn: (kept: UnkeptBedTest) =>
      callOrThrow(api.recordBedTest, {
        body: { ...kept, id: newId(), at: new Date().toISOString() },
      }),
    onSuccess: () => {
      onKept();
      void cache.invalidateQueries({ queryKey: bedTestsKey });
    },
  });
  return (
    <>
      <Action
        kind="strong"
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
      {keep.isSuccess && test === undefined ? <p role="status">{words.kept}</p> : null}
    </>
  );
};
