import type { ProvenSetting } from '../../../core/book/provenSetting.ts';
import { stockOnMachine } from '../../../core/book/keptStock.ts';
import { marksOf } from '../../../core/marking/markTest.ts';
import { KeptMarks } from './KeptMarks.tsx';
import { useMarkTests } from './useMarkTests.ts';

/** The marks that are kept of a kept setting's sheet; nothing where there are none. */
export const MarksOfEntry = ({ entry }: { readonly entry: ProvenSetting }) => {
  const { data } = useMarkTests();
  const kept = marksOf(stockOnMachine(entry.holdsFor), data?.tests ?? []);
  return Object.keys(kept).length === 0 ? null : <KeptMarks kept={kept} />;
};
