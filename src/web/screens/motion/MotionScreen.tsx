import { pageApi } from '../../../wire/pageApi.ts';
import { IfMay } from '../../parts/action/IfMay.tsx';
import { useState } from 'react';
import type { Machine } from '../../../core/machine/machine.ts';
import { machineText, motionText as words } from '../../../words/texts.ts';
import { Page, Section } from '../../parts/page/Page.tsx';
import { MachineHere } from '../machine/MachineHere.tsx';
import { MotionForm } from './MotionForm.tsx';
import { TimedJobs } from './TimedJobs.tsx';
import './motion.css';

/** How the machine moves: typed from its controller, or told from jobs that were timed. */
export const MotionScreen = () => (
  <Page title={words.title} lead={words.lead}>
    <MachineHere>
      {(machine, change, { id }, study) => (
        <>
          <p className="soft">
            {study === undefined ? machineText.noStudy : machineText.forStudies}
          </p>
          <IfMay call={pageApi.describeMachine} isSaid>
            <BothWays machineId={id} machine={machine} onChange={change} />
          </IfMay>
        </>
      )}
    </MachineHere>
  </Page>
);

interface BothWaysProps {
  readonly machineId: string;
  readonly machine: Machine;
  readonly onChange: (machine: Machine) => void;
}

const BothWays = ({ machineId, machine, onChange }: BothWaysProps) => {
  const [kept, setKept] = useState(0);
  return (
    <>
      <Section title={words.typed}>
        <MotionForm key={kept} machineId={machineId} machine={machine} onChange={onChange} />
      </Section>
      <Section title={words.jobs}>
        <TimedJobs
          machine={machine}
          onKeep={(motion) => {
            onChange({ ...machine, motion });
            setKept((count) => count + 1);
          }}
        />
      </Section>
    </>
  );
};
