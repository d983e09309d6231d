import { useState } from 'react';
import type { CardDrawing } from '../../../core/card/cardDrawing.ts';
import type { Machine } from '../../../core/machine/machine.ts';
import type { Problem } from '../../../core/problem.ts';
import {
  machineFileKinds,
  machineFiles,
  type MachineFileKind,
} from '../../../formats/machineFiles.ts';
import type { CautionAct } from '../../../words/shape/caution.ts';
import { essentialCautions } from '../../../words/cautions.ts';
import { cornersText as words } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Cautions } from '../../parts/cautions/Cautions.tsx';
import { ProblemNotice } from '../../parts/notice/Notice.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { saveForMachine } from '../../state/saveForMachine.ts';

const cutActs: readonly CautionAct[] = [
  'unattended',
  'fire',
  'card',
  'beforeCut',
  'injury',
  'always',
];

export interface CornersFilesProps {
  readonly drawing: CardDrawing;
  readonly machine: Machine;
}

/** The drawing as files, with the cautions that go into them; what the check of files faults is not saved. */
export const CornersFiles = ({ drawing, machine }: CornersFilesProps) => {
  const [problem, setProblem] = useState<Problem>();
  const save = async (kind: MachineFileKind): Promise<void> => {
    setProblem(
      await saveForMachine('four-corners', kind, {
        of: { title: words.fileTitle, plainTitle: 'four corners', drawing },
        machine,
        notes: essentialCautions(cutActs).map(({ sentence }) => sentence),
      }),
    );
  };
  return (
    <Section title={words.files}>
      <p>{words.howToLay}</p>
      <Cautions acts={cutActs} />
      <div className="actions">
        {machineFileKinds.map((kind) => (
          <Action key={kind} onPress={() => void save(kind)}>
            {machineFiles[kind].name}
          </Action>
        ))}
      </div>
      {problem === undefined ? null : <ProblemNotice tone="stop" problem={problem} />}
      <p className="small soft">{words.filesMore}</p>
    </Section>
  );
};
