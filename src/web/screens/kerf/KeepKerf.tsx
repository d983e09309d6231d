import { useMutation, useQueryClient } from '@tanstack/react-query';
import { kerfTestSays, type KerfTest, type UnkeptKerfTest } from '../../../core/kerf/kerfTest.ts';
import { pageApi } from '../../../wire/pageApi.ts';
import { kerfText as words } from '../../../words/texts.ts';
import { SureAction } from '../../parts/action/SureAction.tsx';
import { EarlierList } from '../../parts/earlier/EarlierList.tsx';
import { KeepTest } from '../../parts/earlier/KeepTest.tsx';
import { callOrThrow } from '../../state/call.ts';
import { kerfTestsKey } from './useKerfTests.ts';

export interface KeepKerfProps {
  /** Absent: nothing was measured yet. */
  readonly test: UnkeptKerfTest | undefined;
  readonly onKept: () => void;
}

/** Keeps what was measured with the setting. */
export const KeepKerf = ({ test, onKept }: KeepKerfProps) => (
  <div className="actions">
    <KeepTest
      words={words}
      test={test}
      record={(body) => callOrThrow(pageApi.recordKerfTest, { body })}
      queryKey={kerfTestsKey}
      onKept={onKept}
    />
  </div>
);

export interface KeptKerfsProps {
  readonly tests: readonly KerfTest[] | undefined;
  readonly isPending: boolean;
  readonly onAgain: () => void;
}

/** What was kept of this setting, the latest first. */
export const KeptKerfs = ({ tests, isPending, onAgain }: KeptKerfsProps) => {
  const cache = useQueryClient();
  const remove = useMutation({
    mutationFn: (id: string) => callOrThrow(pageApi.removeKerfTest, { params: { id } }),
    onSettled: () => cache.invalidateQueries({ queryKey: kerfTestsKey }),
  });
  return (
    <EarlierList words={words} tests={tests} isPending={isPending} onAgain={onAgain}>
      {(test) => {
        const told = kerfTestSays(test);
        const { kerf, joints = [] } = told.ok ? told.value : {};
        return (
          <>
            <p>
              <b>{new Date(test.at).toLocaleDateString()}</b>{' '}
              {words.keptLine(kerf, joints.length, test.stock.batch)}
            </p>
            <SureAction
              calls={pageApi.removeKerfTest}
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
