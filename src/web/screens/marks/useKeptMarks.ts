import { stockOnMachine } from '../../../core/book/keptStock.ts';
import type { ProvenSetting } from '../../../core/book/provenSetting.ts';
import { marksOf, type KeptMarks } from '../../../core/marking/markTest.ts';
import { useMachines } from '../../state/machines.ts';
import { useMarkTests } from './useMarkTests.ts';

/** The marks that are kept of a kept setting's sheet, held to its machine as it is by now; none until both are known. */
export const useKeptMarks = (holdsFor: ProvenSetting['holdsFor']): KeptMarks => {
  const { data } = useMarkTests();
  const { all, isPending } = useMachines();
  if (data === undefined || isPending) return {};
  const machine = all.find(({ id }) => id === holdsFor.machineId)?.machine;
  return marksOf(stockOnMachine(holdsFor), data.tests, machine);
};
