import { useState } from 'react';
import type { Machine } from '../../../core/machine/machine.ts';
import { powerLimit } from '../../../core/tube/deliveredPower.ts';
import { longestPulseS } from '../../../core/metering/meterPulse.ts';
import { meterPlan, type MeterPlan, type MeterStep } from '../../../core/metering/meterPlan.ts';
import { currentWords, powerWords, meterText as words } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { SureAction } from '../../parts/action/SureAction.tsx';
import { ProblemNotice } from '../../parts/notice/Notice.tsx';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import { readCurrent, readPowerUpTo } from '../../parts/quantity/readers.ts';
import { emptyDraft, readingsOf, withReading, type MeterDraft, type Round } from './meterDraft.ts';

export interface MeterTableProps {
  readonly machine: Machine;
  readonly draft: MeterDraft;
  readonly onChange: (draft: MeterDraft) => void;
}

/** The settings to fire at, as the readings so far ask for them, each with room for two readings. */
export const MeterTable = ({ machine, draft, onChange }: MeterTableProps) => {
  const { ratedCurrentMa, maxPowerPct } = machine;
  const plan = meterPlan({
    maxPowerPct,
    readings: readingsOf(draft),
    ...(ratedCurrentMa === undefined ? {} : { ratedCurrentMa }),
  });
  if (!plan.ok) return <ProblemNotice tone="care" problem={plan.problem} />;
  const steps = withOwn(plan.value, draft.own);
  const missing = steps.reduce((sum, { have, wanted }) => sum + Math.max(0, wanted - have), 0);
  return (
    <>
      <table className="meter-table figure-text">
        <thead>
          <tr>
            <th scope="col">{words.setting}</th>
            <th scope="col">{words.up}</th>
            <th scope="col">{words.down}</th>
          </tr>
        </thead>
        <tbody>
          {steps.map((step) => (
            <Row key={step.powerPct} step={step} draft={draft} onChange={onChange} />
          ))}
        </tbody>
      </table>
      <p>{missing > 0 ? words.more(missing) : words.complete}</p>
      <OwnSetting
        onAdd={(powerPct) => onChange({ ...draft, own: [...draft.own, powerPct] })}
        most={powerLimit(machine).powerPct}
      />
      {readingsOf(draft).length === 0 ? null : (
        <SureAction ask={words.startOverAsk} onPress={() => onChange({ ...emptyDraft })}>
          {words.startOver}
        </SureAction>
      )}
    </>
  );
};

/** The plan with what the person added to it. */
const withOwn = ({ steps }: MeterPlan, own: readonly number[]): readonly MeterStep[] => {
  const added = own
    .filter((powerPct) => !steps.some((step) => step.powerPct === powerPct))
    .map((powerPct): MeterStep => ({ powerPct, have: 0, wanted: 0 }));
  return [...steps, ...added].sort((a, b) => a.powerPct - b.powerPct);
};

interface RowProps extends Pick<MeterTableProps, 'draft' | 'onChange'> {
  readonly step: MeterStep;
}

const Row = ({ step, draft, onChange }: RowProps) => {
  const { powerPct, why, have, wanted, expectedMa } = step;
  const notes = [
    ...(why === undefined ? [] : [words.why(why)]),
    ...(have === 0 && expectedMa !== undefined ? [words.expected(expectedMa)] : []),
    ...(have === 1 && wanted === 1 ? [words.once] : []),
    ...(have < wanted ? [words.pulse(longestPulseS(powerPct))] : []),
  ];
  const reading = (round: Round) => (
    <QuantityField
      label={words.readingAt(powerPct, round)}
      hideLabel
      optional
      value={draft[round][String(powerPct)]}
      show={currentWords}
      parse={readCurrent}
      onChange={(currentMa) => onChange(withReading(draft, round, powerPct, currentMa))}
    />
  );
  return (
    <tr className={have < wanted ? 'meter-wanted' : undefined}>
      <th scope="row">
        {powerWords(powerPct)}
        {notes.length === 0 ? null : <span className="meter-note">{notes.join(', ')}</span>}
      </th>
      <td>{reading('up')}</td>
      <td>{reading('down')}</td>
    </tr>
  );
};

const OwnSetting = ({
  most,
  onAdd,
}: {
  readonly most: number;
  readonly onAdd: (powerPct: number) => void;
}) => {
  const [powerPct, setPowerPct] = useState<number>();
  return (
    <div className="meter-own">
      <QuantityField
        label={words.own}
        optional
        value={powerPct}
        show={powerWords}
        parse={readPowerUpTo(most)}
        onChange={setPowerPct}
      />
      <Action
        keepsTyped
        isDisabled={powerPct === undefined}
        onPress={() => {
          if (powerPct !== undefined) onAdd(powerPct);
          setPowerPct(undefined);
        }}
      >
        {words.ownAdd}
      </Action>
    </div>
  );
};
