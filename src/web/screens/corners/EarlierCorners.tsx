import { useMutation, useQueryClient } from '@tanstack/react-query';
import { bedTestReport, type BedTest } from '../../../core/bed/bedTest.ts';
import type { Machine } from '../../../core/machine/machine.ts';
import { api } from '../../../wire/api.ts';
import { cornersText as words } from '../../../words/en/screens/corners.ts';
import { shellText } from '../../../words/en/screens/shell.ts';
import { Action } from '../../parts/action/Action.tsx';
import { SureAction } from '../../parts/action/SureAction.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { callOrThrow } from '../../state/call.ts';
import { bedTestsKey, useBedTests } from './useBedTests.ts';

/** The readings of this machine's four corners, the latest first. */
export const EarlierCorners = ({ machine }: { readonly machine: Machine }) => {
  const { data, isPending, refetch } = useBedTests();
  const cache = useQueryClient();
  const remove = useMutation({
    mutationFn: (id: string) => callOrThrow(api.removeBedTest, { params: { id } }),
    onSettled: () => cache.invalidateQueries({ queryKey: bedTestsKey }),
  });
  const own = data?.tests.filter((test) => test.machine === machine.name);
  return (
    <Section title={words.earlier}>
      {own === undefined ? (
        isPending ? (
          <p className="soft">{shellText.loading}</p>
        ) : (
          <div className="actions">
            <Action onPress={() => void refetch()}>{shellText.tryAgain}</Action>
          </div>
        )
      ) : own.length === 0 ? (
        <p className="soft">{words.none}</p>
      ) : (
        <ul className="corners-tests">
          {own.map((test) => (
            <li key={test.id}>
              <Line test={test} />
              <SureAction ask={words.removeAsk} onPress={() => remove.mutate(test.id)}>
                {words.remove}
              </SureAction>
            </li>
          ))}
        </ul>
      )}
    </Section>
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
