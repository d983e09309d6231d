import { useState } from 'react';
import type { Tally } from '../../../core/reading/tally.ts';
import type { RecordedTally } from '../../../core/study/study.ts';
import { tallyText as words } from '../../../words/texts.ts';
import { Action } from '../action/Action.tsx';
import { SureAction } from '../action/SureAction.tsx';
import { TallyForm } from './TallyForm.tsx';

export interface CountedOrderProps {
  readonly tally: RecordedTally;
  readonly material: string;
  readonly onCorrect: (tally: RecordedTally) => void;
  readonly onRemove: () => void;
}

/** An order that was counted. A slip in it is put right here, where it was typed. */
export const CountedOrder = ({ tally, material, onCorrect, onRemove }: CountedOrderProps) => {
  const [isOpen, setOpen] = useState(false);
  const correct = (counted: Tally): void => {
    const { id, at, setting, provenSettingId, orderId, foretold, sheet } = tally;
    onCorrect({
      ...counted,
      id,
      at,
      setting,
      ...(provenSettingId === undefined ? {} : { provenSettingId }),
      ...(orderId === undefined ? {} : { orderId }),
      ...(foretold === undefined ? {} : { foretold }),
      ...(sheet === undefined ? {} : { sheet }),
    });
    setOpen(false);
  };
  return (
    <li className="tally-line">
      <span>
        {new Date(tally.at).toLocaleDateString()} · {words.at(tally.setting)}: {words.line(tally)}
      </span>
      <span className="actions">
        <Action kind="quiet" onPress={() => setOpen(!isOpen)}>
          {isOpen ? words.leaveIt : words.correct}
        </Action>
        <SureAction ask={words.removeAsk} onPress={onRemove}>
          {words.remove}
        </SureAction>
      </span>
      {isOpen ? (
        <TallyForm
          name={tally.id}
          material={material}
          partLengthMm={tally.partLengthMm}
          settings={[tally.setting]}
          before={tally}
          {...(tally.batch === undefined ? {} : { batches: [tally.batch] })}
          onSave={correct}
        />
      ) : null}
    </li>
  );
};
