import type { ReactNode } from 'react';
import type { Machine } from '../../../core/machine/machine.ts';
import type { WorkshopMachine } from '../../../core/machine/workshopMachine.ts';
import type { Study } from '../../../core/study/study.ts';
import { machinesText as words, shellText } from '../../../words/texts.ts';
import { Choice } from '../../parts/choice/Choice.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import { pickMachine, useMachineHere } from '../../state/machineHere.ts';
import { useStudy, useWorkshop } from '../../state/workshop.tsx';

export interface MachineHereProps {
  readonly children: (
    machine: Machine,
    change: (machine: Machine) => void,
    here: WorkshopMachine,
    /** The study of the sheet on the bed, where that is of this machine. */
    study: Study | undefined,
  ) => ReactNode;
}

/**
 * The machine that a screen is about, to be picked where there are several. What is said of it counts for every sheet of it at
 * once.
 */
export const MachineHere = ({ children }: MachineHereProps) => {
  const { here, all, studyId } = useMachineHere();
  const { store } = useWorkshop();
  if (here === undefined) return <p className="page-wait">{shellText.loading}</p>;
  const change = (machine: Machine): void => {
    const addedAt = new Date().toISOString();
    store.make({ kind: 'describe-machine', machineId: here.id, addedAt, machine });
  };
  const draw = (study: Study | undefined): ReactNode => children(here.machine, change, here, study);
  return (
    <div key={here.id} className="stack">
      {all.length < 2 ? null : (
        <Choice
          label={words.which}
          value={here.id}
          options={all.map((each) => ({ value: each.id, label: words.nameOf(each) }))}
          onChange={pickMachine}
        />
      )}
      {here.isExample ? (
        <Notice tone="care">
          <p>{words.invented}</p>
        </Notice>
      ) : null}
      {studyId === undefined ? draw(undefined) : <OfTheBed studyId={studyId}>{draw}</OfTheBed>}
    </div>
  );
};

interface OfTheBedProps {
  readonly studyId: string;
  readonly children: (study: Study | undefined) => ReactNode;
}

const OfTheBed = ({ studyId, children }: OfTheBedProps) => children(useStudy(studyId).study);
