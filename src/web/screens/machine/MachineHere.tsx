import { useState, type ReactNode } from 'react';
import type { Machine } from '../../../core/machine/machine.ts';
import type { Study } from '../../../core/study/study.ts';
import { shellText } from '../../../words/en/screens/shell.ts';
import { useHome } from '../../state/queries.ts';
import { rememberMachine, useMachine } from '../../state/useMachine.ts';
import { useStudy, useWorkshop } from '../../state/workshop.tsx';

export interface MachineHereProps {
  readonly children: (
    machine: Machine,
    change: (machine: Machine) => void,
    /** Whose machine it is: of the sheet on the bed, or of this browser until there is a sheet. */
    of: 'bed' | 'browser',
    /** The study of the sheet on the bed. */
    study: Study | undefined,
  ) => ReactNode;
}

/** The machine that counts now. A change counts for the sheet on the bed at once, and for new sheets. */
export const MachineHere = ({ children }: MachineHereProps) => {
  const { data: home, isPending } = useHome();
  if (isPending) return <p className="page-wait">{shellText.loading}</p>;
  const study = home?.latest?.study;
  return study === undefined ? (
    <OfThisBrowser>{children}</OfThisBrowser>
  ) : (
    <OfTheBed studyId={study.id}>{children}</OfTheBed>
  );
};

const OfThisBrowser = ({ children }: MachineHereProps) => {
  const [machine, setMachine] = useState(useMachine());
  const change = (next: Machine): void => {
    rememberMachine(next);
    setMachine(next);
  };
  return children(machine, change, 'browser', undefined);
};

const OfTheBed = ({ studyId, children }: MachineHereProps & { readonly studyId: string }) => {
  const { study } = useStudy(studyId);
  const { keeper } = useWorkshop();
  if (study === undefined) return <p className="page-wait">{shellText.loading}</p>;
  const change = (machine: Machine): void => {
    rememberMachine(machine);
    keeper.make({ kind: 'head', studyId, head: { machine } });
  };
  return children(study.machine, change, 'bed', study);
};
