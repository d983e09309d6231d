import { pageApi } from '../../../wire/pageApi.ts';
import { useState } from 'react';
import { useLocation } from 'wouter';
import { cardWorth, mostWorth } from '../../../core/cost/cardWorth.ts';
import type { NextCardAnswer } from '../../../core/cutmodel/fitAnswer.ts';
import type { Setting } from '../../../core/machine/setting.ts';
import { promiseOf } from '../../../core/study/promiseOf.ts';
import type { Study } from '../../../core/study/study.ts';
import { answerHeadText, studyText as words } from '../../../words/texts.ts';
import { problemInWords } from '../../state/inWords.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { keepNextCard } from '../../state/nextCard.ts';
import { keepPartsAhead, keptPartsAhead } from '../../state/partsAhead.ts';
import { toCutStudy } from '../../../core/study/toCutStudy.ts';
import { saysSomething, useNextCard } from '../../state/useAnswer.ts';
import { CardPays } from './CardPays.tsx';
import { RungChips } from './RungChips.tsx';
import { pageAt, pages } from '../../state/pages.ts';

/** Where another card would teach most and what it should gain; or that it is enough. Reckoned when asked for. */
export const NextCard = ({ study }: { readonly study: Study }) => {
  const [asked, setAsked] = useState(false);
  if (!saysSomething(toCutStudy(study))) return null;
  return (
    <Section title={words.next}>
      {asked ? (
        <Proposal study={study} />
      ) : (
        <div className="actions">
          <Action onPress={() => setAsked(true)}>{words.nextAsk}</Action>
        </div>
      )}
    </Section>
  );
};

/** A card of eight cells, and one of twelve: the one that leaves most time on the order is proposed. */
const sizes = [
  { cellsWanted: 8, settingsAtMost: 4 },
  { cellsWanted: 12, settingsAtMost: 6 },
] as const;

const Proposal = ({ study }: { readonly study: Study }) => {
  const small = useNextCard(study, sizes[0]);
  const large = useNextCard(study, sizes[1]);
  const [parts, setParts] = useState(keptPartsAhead);
  const broke = small.broke ?? large.broke;
  if (broke !== undefined) return <p>{answerHeadText.broke(broke)}</p>;
  if (small.answer === undefined || large.answer === undefined) {
    return <p>{answerHeadText.calculating}</p>;
  }
  const { partLengthMm } = promiseOf(study);
  const order = { parts, partLengthMm };
  const answer = mostWorth([small.answer, large.answer], order) ?? large.answer;
  return (
    <div className="stack">
      <Proposed study={study} answer={answer} pays={cardWorth(answer, order)?.pays ?? true} />
      <CardPays
        proposal={answer}
        partLengthMm={partLengthMm}
        parts={parts}
        onParts={(wanted) => {
          setParts(wanted);
          keepPartsAhead(wanted);
        }}
      />
    </div>
  );
};

interface ProposedProps {
  readonly study: Study;
  readonly answer: NextCardAnswer;
  readonly pays: boolean;
}

const Proposed = ({ study, answer, pays }: ProposedProps) => {
  const [, goTo] = useLocation();
  const { message, remedy } = problemInWords(answer.reason);
  const worth = answer.worthCutting && pays;
  const make = (): void => {
    keepNextCard(study.id, settingsOf(answer));
    goTo(`${pageAt(pages.newCard, { id: study.id })}?next`);
  };
  return (
    <div className="stack">
      <p>
        {message} {worth ? remedy : ''}
      </p>
      <RungChips settings={settingsOf(answer)} />
      <div className="actions">
        <Action calls={pageApi.addCard} kind={worth ? 'strong' : 'plain'} onPress={make}>
          {worth ? words.nextMake : words.nextAnyway}
        </Action>
      </div>
    </div>
  );
};

/** Each setting once, slowest first. */
const settingsOf = ({ cells }: NextCardAnswer): readonly Setting[] => {
  const settings = new Map(
    cells.map(({ rung, powerPct, speedMmPerS, passes }) => [
      rung,
      { powerPct, speedMmPerS, passes },
    ]),
  );
  return [...settings.values()].sort(
    (a, b) => a.powerPct - b.powerPct || a.speedMmPerS - b.speedMmPerS,
  );
};
