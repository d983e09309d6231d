import { kerfTestSays, kerfTestsOf } from '../../../core/kerf/kerfTest.ts';
import { stockOnMachine } from '../../../core/book/keptStock.ts';
import type { ProvenSetting } from '../../../core/book/provenSetting.ts';
import { kerfText as words } from '../../../words/texts.ts';
import { useKerfTests } from './useKerfTests.ts';

/** The kerf that was kept with a setting, the latest; nothing where there is none. */
export const KeptKerf = ({ entry }: { readonly entry: ProvenSetting }) => {
  const { data } = useKerfTests();
  const subject = { setting: entry.setting, ...stockOnMachine(entry.holdsFor) };
  const [latest] = kerfTestsOf(subject, data?.tests ?? []);
  if (latest === undefined) return null;
  const told = kerfTestSays(latest);
  if (!told.ok) return null;
  const { kerf, joints = [] } = told.value;
  return (
    <dl className="entry-facts">
      <div>
        <dt>{words.fact}</dt>
        <dd>
          {words.keptLine(kerf, joints.length, latest.stock.batch)}
          {joints.length === 0 ? null : (
            <ul>
              {joints.map((joint) => (
                <li key={joint.kind}>{words.joint(joint)}</li>
              ))}
            </ul>
          )}
        </dd>
      </div>
    </dl>
  );
};
