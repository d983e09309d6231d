import { useMemo, useState } from 'react';
import type { Card } from '../../../core/card/card.ts';
import { cardTime, type CardTime } from '../../../core/card/cardTime.ts';
import { mistypedByTime } from '../../../core/card/mistypedByTime.ts';
import type { Machine } from '../../../core/machine/machine.ts';
import type { Study } from '../../../core/study/study.ts';
import { durationWords, timeText as words, typingVerdictWords } from '../../../words/texts.ts';
import { keepMeasuredTime, measuredTimeOf } from '../../state/measuredTimes.ts';
import { ActionLink } from '../action/Action.tsx';
import { Notice } from '../notice/Notice.tsx';
import { QuantityField } from '../quantity/QuantityField.tsx';
import { readDuration } from '../quantity/readers.ts';
import { Said } from '../said/Said.tsx';
import { pages } from '../../state/pages.ts';

export interface MeasuredTimeProps {
  readonly study: Study;
  readonly card: Card;
}

/** How long a card should take and where that goes; and what the time that the machine told says of what was typed. */
export const MeasuredTime = ({ study, card }: MeasuredTimeProps) => {
  const { machine } = study;
  const time = useMemo(() => cardTime(card, machine.motion), [card, machine.motion]);
  const key = `card.${study.id}.${card.code}`;
  const [told, setTold] = useState(() => measuredTimeOf(key));
  const tell = (seconds: number | undefined): void => {
    const said = seconds !== undefined && seconds > 0 ? seconds : undefined;
    keepMeasuredTime(key, said);
    setTold(said);
  };
  return (
    <>
      <p>
        {words.should(time)} {words.goes(time)}
      </p>
      {time.motion === 'known' ? null : (
        <div className="stack">
          <p className="small soft">{words.assumed}</p>
          <div className="actions">
            <ActionLink kind="quiet" href={pages.motion}>
              {words.tell}
            </ActionLink>
          </div>
        </div>
      )}
      <QuantityField
        label={words.ask(time)}
        hint={words.askHint}
        optional
        value={told}
        show={durationWords}
        parse={readDuration}
        onChange={tell}
      />
      <Said what="answer">
        {told === undefined ? null : (
          <Verdict
            card={card}
            before={cardBefore(study, card)}
            machine={machine}
            time={time}
            told={told}
          />
        )}
      </Said>
    </>
  );
};

/** The card whose settings may still stand in the control program. */
const cardBefore = ({ cards }: Study, { code }: Card): Card | undefined =>
  cards
    .slice(
      0,
      cards.findIndex((each) => each.code === code),
    )
    .findLast(({ origin }) => origin === 'designed');

interface VerdictProps {
  readonly card: Card;
  readonly before: Card | undefined;
  readonly machine: Machine;
  readonly time: CardTime;
  readonly told: number;
}

const Verdict = ({ card, before, machine, time, told }: VerdictProps) => {
  const verdict = useMemo(
    () => mistypedByTime(card, told, { machine, ...(before === undefined ? {} : { before }) }),
    [card, told, machine, before],
  );
  const within = told >= time.lowSeconds && told <= time.highSeconds;
  const [head, ...suspects] = typingVerdictWords(verdict);
  const isFine = verdict.verdict === 'as-expected' || (verdict.suspects.length === 0 && within);
  return (
    <Notice
      tone={isFine ? 'say' : 'care'}
      title={within ? words.inside(told) : words.outside(told, time)}
    >
      <p>{head}</p>
      {suspects.length === 0 ? null : (
        <>
          <ul>
            {suspects.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
          <p>{words.asTyped}</p>
        </>
      )}
    </Notice>
  );
};
