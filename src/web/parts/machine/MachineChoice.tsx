import { useState } from 'react';
import type { WorkshopMachine } from '../../../core/machine/workshopMachine.ts';
import { machinesText as words } from '../../../words/texts.ts';
import { useMachines } from '../../state/machines.ts';
import { Choice } from '../choice/Choice.tsx';

export interface PickedMachine {
  /** The one that sheets are begun on, until another is picked. */
  readonly machine: WorkshopMachine;
  readonly own: readonly WorkshopMachine[];
  readonly pick: (id: string) => void;
}

/** On which machine something is begun. `first`: that of the sheet, where there is one. */
export const usePickedMachine = (first?: string): PickedMachine => {
  const { own, usual } = useMachines();
  const [id, pick] = useState(first);
  return { machine: own.find((each) => each.id === id) ?? usual, own, pick };
};

/** Asked only where there are several. */
export const MachineChoice = ({ picked }: { readonly picked: PickedMachine }) =>
  picked.own.length < 2 ? null : (
    <Choice
      label={words.cutOn}
      value={picked.machine.id}
      options={picked.own.map((each) => ({ value: each.id, label: words.nameOf(each) }))}
      onChange={picked.pick}
    />
  );
