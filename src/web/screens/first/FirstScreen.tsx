import { useCallback } from 'react';
import { Link } from 'wouter';
import type { ReadingEvent } from '../../../core/reading/readingEvent.ts';
import { lengthWords, powerWords, firstText as words } from '../../../words/texts.ts';
import { AnswerPanel } from '../../parts/answer/AnswerPanel.tsx';
import { useDocumentTitle } from '../../parts/page/Page.tsx';
import { CardReader } from '../../parts/reader/CardReader.tsx';
import { useReading } from '../../parts/reader/useReading.ts';
import { useSampleCard, type SampleCard } from '../../state/sampleCard.ts';
import { WorkshopProvider } from '../../state/workshop.tsx';
import { Doors } from './Doors.tsx';
import { ExampleDoor } from './ExampleDoor.tsx';
import { SampleQuestion } from './SampleQuestion.tsx';
import '../study/workbench.css';
import { pages } from '../../state/pages.ts';

/**
 * An answer, not a form: a card is already drawn, and whoever has one like it may tap at once. Nothing is saved until
 * the person says that it is their own.
 */
export const FirstScreen = () => {
  useDocumentTitle(words.title);
  const sample = useSampleCard();
  const { study, draft } = sample;
  return (
    <WorkshopProvider value={sample.workshop}>
      <div className="workbench">
        <div className="workbench-head">
          <h1>{words.title}</h1>
          <p className="page-lead">
            {words.lead(
              study.stock.material,
              lengthWords(study.stock.nominalThicknessMm),
              powerWords(draft.powerPct),
            )}{' '}
            <Link href={pages.describeCard}>{words.notYours}</Link>
          </p>
        </div>
        <DraftCard key={draft.card.code} sample={sample} />
        <div className="workbench-paper">
          <AnswerPanel study={study} isSample={sample.isOpen} />
          <SampleQuestion sample={sample} />
          <Doors />
          <ExampleDoor />
        </div>
      </div>
    </WorkshopProvider>
  );
};

const DraftCard = ({ sample: { draft, study, workshop } }: { readonly sample: SampleCard }) => {
  const { store } = workshop;
  const studyId = draft.study.id;
  const say = useCallback(
    (events: readonly ReadingEvent[]) => store.make({ kind: 'read', studyId, events }),
    [store, studyId],
  );
  const reading = useReading(draft.card, study.events, say);
  return (
    <div className="workbench-bench bench">
      <div className="workbench-stay">
        {/* The sample is of plywood. */}
        <CardReader reading={reading} flaws="pocket-or-knot" edges="wood" />
      </div>
    </div>
  );
};
