import { useCallback, useState } from 'react';
import { Link } from 'wouter';
import type { ReadingEvent } from '../../../core/reading/readingEvent.ts';
import type { Study } from '../../../core/study/study.ts';
import { lengthWords, powerWords } from '../../../words/en/figures.ts';
import { firstText as words } from '../../../words/en/screens/first.ts';
import { AnswerPanel } from '../../parts/answer/AnswerPanel.tsx';
import { useDocumentTitle } from '../../parts/page/Page.tsx';
import { CardReader } from '../../parts/reader/CardReader.tsx';
import { useReading } from '../../parts/reader/useReading.ts';
import { firstDraft } from '../../state/firstDraft.ts';
import { useKeptStudy, useWorkshop } from '../../state/workshop.tsx';
import { Doors } from './Doors.tsx';
import { ExampleDoor } from './ExampleDoor.tsx';
import '../study/workbench.css';

/**
 * An answer, not a form: a card is already drawn, and whoever has one like it may tap at once. Nothing is saved until
 * the first tap.
 */
export const FirstScreen = () => {
  useDocumentTitle(words.title);
  const [draft] = useState(firstDraft);
  const { keeper } = useWorkshop();
  const study = useKeptStudy(draft.study.id) ?? draft.study;
  const say = useCallback(
    (events: readonly ReadingEvent[]) => {
      const studyId = draft.study.id;
      const { cards, ...head } = draft.study;
      if (keeper.study(studyId) === undefined) {
        keeper.make(
          { kind: 'start', studyId, study: { ...head, cards: [] } },
          ...cards.map((card) => ({ kind: 'add-card', studyId, card }) as const),
        );
      }
      keeper.make({ kind: 'read', studyId, events });
    },
    [keeper, draft],
  );
  return (
    <div className="workbench">
      <div className="workbench-head">
        <h1>{words.title}</h1>
        <p className="page-lead">
          {words.lead(
            study.stock.material,
            lengthWords(study.stock.nominalThicknessMm),
            powerWords(draft.powerPct),
          )}{' '}
          <Link href="/cards/describe">{words.notYours}</Link>
        </p>
      </div>
      <DraftCard study={study} say={say} card={draft.card} />
      <div className="workbench-paper">
        <AnswerPanel study={study} />
        <Doors />
        <ExampleDoor />
      </div>
    </div>
  );
};

interface DraftCardProps {
  readonly study: Study;
  readonly card: Study['cards'][number];
  readonly say: (events: readonly ReadingEvent[]) => void;
}

const DraftCard = ({ study, card, say }: DraftCardProps) => {
  const reading = useReading(card, study.events, say);
  return (
    <div className="workbench-bench bench">
      <div className="workbench-stay">
        <CardReader reading={reading} />
      </div>
    </div>
  );
};
