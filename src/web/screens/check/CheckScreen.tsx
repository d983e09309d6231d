import { machineFileEndings } from '../../../formats/machineFiles.ts';
import { useState } from 'react';
import type { Card } from '../../../core/card/card.ts';
import { checkToolpath, type CheckReport } from '../../../core/filecheck/checkToolpath.ts';
import { undescribedMachine, type Machine } from '../../../core/machine/machine.ts';
import { done, type Outcome } from '../../../core/problem.ts';
import { refuseBySize } from '../../../formats/drawingSize.ts';
import { readToolpath } from '../../../formats/readToolpath.ts';
import { checkText as words } from '../../../words/texts.ts';
import { Cautions } from '../../parts/cautions/Cautions.tsx';
import { FilePick } from '../../parts/file/FilePick.tsx';
import { Invented } from '../../parts/invented/Invented.tsx';
import { Page } from '../../parts/page/Page.tsx';
import { useMachines } from '../../state/machines.ts';
import { useStudy } from '../../state/workshop.tsx';
import { Findings } from './Findings.tsx';

const acts = ['unattended', 'always'] as const;

export interface CheckScreenProps {
  readonly studyId?: string;
  readonly code?: string;
}

/** Reads a file for the machine back and says what would go wrong, naming the cell. The file stays on this page. */
export const CheckScreen = ({ studyId, code }: CheckScreenProps) =>
  studyId === undefined ? <CheckOfNoCard /> : <CheckOfStudy studyId={studyId} code={code} />;

/** A machine that nobody has described limits nothing here. */
const CheckOfNoCard = () => {
  const { machine } = useMachines().usual;
  const isDescribed = JSON.stringify(machine) !== JSON.stringify(undescribedMachine);
  return <Check card={undefined} machine={isDescribed ? machine : undefined} isExample={false} />;
};

const CheckOfStudy = ({ studyId, code }: { studyId: string; code: string | undefined }) => {
  const { study } = useStudy(studyId);
  if (study === undefined) return null;
  return (
    <Check
      card={study.cards.find((each) => each.code === code)}
      machine={study.machine}
      isExample={study.isExample}
    />
  );
};

interface Checked {
  readonly name: string;
  readonly report: Outcome<CheckReport>;
}

interface CheckProps {
  readonly card: Card | undefined;
  readonly machine: Machine | undefined;
  readonly isExample: boolean;
}

const Check = ({ card, machine, isExample }: CheckProps) => {
  const [checked, setChecked] = useState<Checked>();
  const read = (name: string, text: string): void => {
    const path = readToolpath(text);
    const scale = machine?.gcode?.sAtFullPower;
    const against = {
      ...(card === undefined ? {} : { card }),
      ...(machine === undefined ? {} : { machine }),
    };
    const scaled = scale === undefined ? {} : { sAtFullPower: scale };
    const report = path.ok ? done(checkToolpath({ ...path.value, ...scaled }, against)) : path;
    setChecked({ name, report });
  };
  return (
    <Page title={words.title} lead={card === undefined ? words.lead : words.leadFor(card.code)}>
      <Invented is={isExample} />
      <FilePick
        label={words.pick}
        accept={machineFileEndings}
        refuse={refuseBySize}
        onText={read}
      />
      {checked === undefined ? null : <Findings name={checked.name} report={checked.report} />}
      <Cautions acts={acts} brief />
    </Page>
  );
};
