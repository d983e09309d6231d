import { useState } from 'react';
import { colourTrial } from '../../../core/card/colourTrial.ts';
import type { Machine } from '../../../core/machine/machine.ts';
import type { Problem } from '../../../core/problem.ts';
import { cardText as words } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { ProblemNotice } from '../../parts/notice/Notice.tsx';
import { CountField } from '../../parts/quantity/CountField.tsx';
import { saveForMachine } from '../../state/saveForMachine.ts';

export interface EntriesFormProps {
  readonly machine: Machine;
  /** What the trial showed; absent: no trial was made. */
  readonly entries: number | undefined;
  readonly onChange: (entries: number | undefined) => void;
}

const trial = colourTrial();
const strips = trial.layers.length;

/** How many entries the control program keeps apart: a card never uses more. */
export const EntriesForm = ({ machine, entries, onChange }: EntriesFormProps) => {
  const [problem, setProblem] = useState<Problem>();
  const save = (kind: 'svg' | 'dxf'): void => {
    const of = { title: words.trialTitle, plainTitle: 'colour trial', drawing: trial };
    void saveForMachine('colour-trial', kind, { of, machine, notes: [words.trialNote] }).then(
      setProblem,
    );
  };
  return (
    <div className="stack">
      <p className="small">{words.trial(strips)}</p>
      <div className="actions">
        <Action kind="quiet" onPress={() => save('svg')}>
          {words.trialSvg}
        </Action>
        <Action kind="quiet" onPress={() => save('dxf')}>
          {words.trialDxf}
        </Action>
      </div>
      <div className="field-row">
        <CountField
          label={words.entries}
          value={entries ?? strips}
          least={3}
          most={strips}
          onChange={(count) => onChange(count >= strips ? undefined : count)}
        />
      </div>
      {problem === undefined ? null : <ProblemNotice problem={problem} tone="stop" />}
    </div>
  );
};
