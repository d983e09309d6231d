import { pageApi } from '../../../wire/pageApi.ts';
import { useState } from 'react';
import { omit } from '../../../core/omit.ts';
import type { Tally } from '../../../core/reading/tally.ts';
import type { RecordedTally } from '../../../core/study/study.ts';
import { peopleText, tallyText as words } from '../../../words/texts.ts';
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
  const who = peopleText.countedBy(tally.by, tally.correctedBy);
  const correct = (counted: Tally): void => {
    const stays = omit(tally, 'out', 'hangs', 'stays', 'spoilt', 'partLengthMm', 'batch');
    onCorrect({ ...counted, ...stays });
    setOpen(false);
  };
  return (
    <li className="tally-line">
      <span>
        {new Date(tally.at).toLocaleDateString()} · {words.at(tally.setting)}: {words.line(tally)}
        {who === '' ? null : <span className="small soft"> · {who}</span>}
      </span>
      <span className="actions">
        <Action kind="quiet" onPress={() => setOpen(!isOpen)}>
          {isOpen ? words.leaveIt : words.correct}
        </Action>
        <SureAction calls={pageApi.removeTally} ask={words.removeAsk} onPress={onRemove}>
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
