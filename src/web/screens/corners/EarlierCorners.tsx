import { useMutation, useQueryClient } from '@tanstack/react-query';
import { bedTestReport, type BedTest } from '../../../core/bed/bedTest.ts';
import { pageApi } from '../../../wire/pageApi.ts';
import { cornersText as words } from '../../../words/texts.ts';
import { SureAction } from '../../parts/action/SureAction.tsx';
import { EarlierList } from '../../parts/earlier/EarlierList.tsx';
import { callOrThrow } from '../../state/call.ts';
import { bedTestsKey, useBedTests } from './useBedTests.ts';

/** The readings of this machine's four corners, the latest first. */
export const EarlierCorners = ({ machineId }: { readonly machineId: string }) => {
  const { data, isPending, refetch } = useBedTests();
  const cache = useQueryClient();
  const remove = useMutation({
    mutationFn: (id: string) => callOrThrow(pageApi.removeBedTest, { params: { id } }),
    onSettled: () => cache.invalidateQueries({ queryKey: bedTestsKey }),
  });
  const own = data?.tests.filter((test) => test.machineId === machineId);
  return (
    <EarlierList words={words} tests={own} isPending={isPending} onAgain={() => void refetch()}>
      {(test) => (
        <>
          <Line test={test} />
          <SureAction
            calls={pageApi.removeBedTest}
            ask={words.removeAsk}
            onPress={() => remove.mutate(test.id)}
          >
            {words.remove}
          </SureAction>
        </>
      )}
    </EarlierList>
  );
};

const Line = ({ test }: { readonly test: BedTest }) => (
  <div>
    <p>
      <b>{new Date(test.at).toLocaleDateString()}</b> {words.verdict(bedTestReport(test).verdict)}
    </p>
    <p className="small soft">
      {words.lineOf(test)}
      {test.note === undefined ? null : ` ${test.note}`}
    </p>
  </div>
);
