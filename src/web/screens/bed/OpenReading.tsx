import { pageApi } from '../../../wire/pageApi.ts';
import type { Card } from '../../../core/card/card.ts';
import { progress } from '../../../core/reading/progress.ts';
import { readCard } from '../../../core/reading/readCard.ts';
import { toCutStudy } from '../../../core/study/toCutStudy.ts';
import type { Study } from '../../../core/study/study.ts';
import { bedText as words } from '../../../words/texts.ts';
import { OnlyIfCut } from '../../parts/material/OnlyIfCut.tsx';
import { ActionLink } from '../../parts/action/Action.tsx';
import { OrderLink } from '../../parts/order/OrderLink.tsx';
import { AnswerSentence } from '../../parts/answer/AnswerSentence.tsx';
import { saysSomething, useAnswer } from '../../state/useAnswer.ts';
import { useStudy } from '../../state/workshop.tsx';
import { pageAt, pages } from '../../state/pages.ts';

/** A sheet from which nothing was kept yet: how far its card is read, the answer so far, and what comes next. */
export const OpenReading = ({ studyId }: { readonly studyId: string }) => {
  const { study } = useStudy(studyId);
  return study === undefined ? null : (
    <OnlyIfCut stock={study.stock} studyId={study.id}>
      <SoFar study={study} />
    </OnlyIfCut>
  );
};

const SoFar = ({ study }: { readonly study: Study }) => {
  const { answer, behind } = useAnswer(study);
  const card = study.cards.at(-1);
  const done = card === undefined ? undefined : progress(readCard(card, study.events).cells);
  return (
    <>
      <div className="kept">
        {answer !== undefined || saysSomething(toCutStudy(study)) ? (
          <AnswerSentence answer={answer} behind={behind} />
        ) : null}
        <p className="soft">
          {done === undefined ? words.noCard : words.read(done.read, done.cells)}
        </p>
      </div>
      <div className="actions">
        <OrderLink studyId={study.id} />
        <Next study={study} card={card} read={done?.read ?? 0} cells={done?.cells ?? 0} />
        <ActionLink calls={pageApi.startStudy} href={pages.newSheet}>
          {words.newOne}
        </ActionLink>
      </div>
    </>
  );
};

interface NextProps {
  readonly study: Study;
  readonly card: Card | undefined;
  readonly read: number;
  readonly cells: number;
}

/** What comes next: a card to make, to cut, to read, or to look at. */
const Next = ({ study: { id }, card, read, cells }: NextProps) => {
  if (card === undefined) {
    return (
      <>
        <ActionLink kind="strong" calls={pageApi.addCard} href={pageAt(pages.newCard, { id })}>
          {words.makeCard}
        </ActionLink>
        <ActionLink href={pageAt(pages.study, { id })}>{words.answer}</ActionLink>
      </>
    );
  }
  const toCut = read === 0 && card.origin === 'designed';
  return (
    <>
      <ActionLink kind="strong" href={pageAt(pages.study, { id })}>
        {toCut ? words.readIt : read < cells ? words.goOn : words.open}
      </ActionLink>
      {toCut ? (
        <ActionLink href={pageAt(pages.takeCard, { id, code: card.code })}>
          {words.takeIt}
        </ActionLink>
      ) : null}
    </>
  );
};
