import { useState } from 'react';
import type { Machine } from '../../../core/machine/machine.ts';
import { inchUnits, metricUnits } from '../../../core/units/unitPreference.ts';
import { unitsShown } from '../../../words/en/figures.ts';
import { machineText as words } from '../../../words/en/screens/machine.ts';
import { shellText } from '../../../words/en/screens/shell.ts';
import { ActionLink } from '../../parts/action/Action.tsx';
import { Choice } from '../../parts/choice/Choice.tsx';
import { Page, Section } from '../../parts/page/Page.tsx';
import { useHome } from '../../state/queries.ts';
import { keepUnits } from '../../state/units.ts';
import { rememberMachine, useMachine } from '../../state/useMachine.ts';
import { useStudy, useWorkshop } from '../../state/workshop.tsx';
import { PhoneInvitation } from '../pair/PhoneInvitation.tsx';
import { MachineForm } from './MachineForm.tsx';

/** What is known of the machine. It counts for the sheet on the bed at once, and for new sheets. */
export const MachineScreen = () => {
  const { data: home, isPending } = useHome();
  if (isPending) return <p className="page-wait">{shellText.loading}</p>;
  const study = home?.latest?.study;
  return (
    <Page title={words.title} lead={words.lead}>
      {study === undefined ? <OfThisBrowser /> : <OfTheBed studyId={study.id} />}
      <PhoneInvitation />
      <Section title={words.file}>
        <p>{words.fileMore}</p>
        <div className="actions">
          <ActionLink href="/check">{words.fileCheck}</ActionLink>
        </div>
      </Section>
      <Section title={words.units}>
        <Choice
          label={words.units}
          hideLabel
          value={unitsShown().length === 'in' ? 'inch' : 'metric'}
          options={(['metric', 'inch'] as const).map((value) => ({
            value,
            label: words.unitChoices[value],
          }))}
          onChange={(value) => {
            keepUnits(value === 'inch' ? inchUnits : metricUnits);
            location.reload();
          }}
        />
        <p className="small soft">{words.unitsMore}</p>
      </Section>
    </Page>
  );
};

const OfThisBrowser = () => {
  const [machine, setMachine] = useState(useMachine());
  const change = (next: Machine): void => {
    rememberMachine(next);
    setMachine(next);
  };
  return (
    <>
      <p className="soft">{words.noStudy}</p>
      <MachineForm machine={machine} onChange={change} />
    </>
  );
};

const OfTheBed = ({ studyId }: { readonly studyId: string }) => {
  const { study } = useStudy(studyId);
  const { keeper } = useWorkshop();
  if (study === undefined) return <p>{shellText.loading}</p>;
  const change = (machine: Machine): void => {
    rememberMachine(machine);
    keeper.make({ kind: 'head', studyId, head: { machine } });
  };
  return (
    <>
      <p className="soft">{words.forStudies}</p>
      <MachineForm machine={study.machine} onChange={change} />
    </>
  );
};
