import { useCallback, useState } from 'react';
import type { Card } from '../../../core/card/card.ts';
import type { ReadingEvent } from '../../../core/reading/readingEvent.ts';
import type { Study } from '../../../core/study/study.ts';
import { photoText as words, shellText, studyText } from '../../../words/texts.ts';
import { Action, ActionLink } from '../../parts/action/Action.tsx';
import { Cautions } from '../../parts/cautions/Cautions.tsx';
import { Invented } from '../../parts/invented/Invented.tsx';
import { Notice, ProblemNotice } from '../../parts/notice/Notice.tsx';
import { Page } from '../../parts/page/Page.tsx';
import { CornersByHand } from '../../parts/photo/CornersByHand.tsx';
import { PhotoPick } from '../../parts/photo/PhotoPick.tsx';
import { useReading } from '../../parts/reader/useReading.ts';
import { pageAt, pages } from '../../state/pages.ts';
import { usePhotoRead, type PhotoReading } from '../../state/usePhotoRead.ts';
import { useStudy, useWorkshop } from '../../state/workshop.tsx';
import type { PhotoQuestion } from '../../worker/photoQuestion.ts';
import { PhotoResult } from './PhotoResult.tsx';
import './photo.css';

export interface PhotoScreenProps {
  readonly studyId: string;
  readonly code: string;
}

/** A card read from photographs, looked over by whoever took them, and then said as if it had been tapped. */
export const PhotoScreen = ({ studyId, code }: PhotoScreenProps) => {
  const { study, loading } = useStudy(studyId);
  const card = study?.cards.find((each) => each.code === code);
  if (study !== undefined && card !== undefined) return <OfCard study={study} card={card} />;
  if (loading) return <p className="page-wait">{shellText.loading}</p>;
  return (
    <Page title={studyText.gone} lead={studyText.goneMore}>
      {null}
    </Page>
  );
};

const OfCard = ({ study, card }: { readonly study: Study; readonly card: Card }) => {
  const { store } = useWorkshop();
  const { id: studyId } = study;
  const say = useCallback(
    (events: readonly ReadingEvent[]) => store.make({ kind: 'read', studyId, events }),
    [store, studyId],
  );
  const reading = useReading(card, study.events, say);
  const [question, setQuestion] = useState<PhotoQuestion>();
  const read = usePhotoRead(question);
  const isDone = read.kind === 'read' && read.read.found;
  return (
    <Page title={words.title(card.code)} lead={words.lead}>
      <Invented is={study.isExample} />
      {isDone ? null : (
        <>
          <Cautions acts={['photo']} />
          <ol className="photo-how">
            {words.how.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ol>
        </>
      )}
      {read.kind === 'at' ? null : <Picks card={card} question={question} onAsk={setQuestion} />}
      <HowFar reading={read} onStop={() => setQuestion(undefined)} />
      {question !== undefined && read.kind === 'read' && !read.read.found ? (
        <CornersByHand
          words={words}
          photo={question.front}
          onCorners={(corners) => setQuestion({ ...question, corners })}
        />
      ) : null}
      {question !== undefined && read.kind === 'read' && read.flat.front !== undefined ? (
        <PhotoResult
          card={card}
          read={read.read}
          flat={{ ...read.flat, front: read.flat.front }}
          photos={question}
          reading={reading}
          studyId={studyId}
        />
      ) : (
        <div className="actions">
          <ActionLink kind="quiet" href={pageAt(pages.card, { id: studyId, code: card.code })}>
            {words.byHand}
          </ActionLink>
        </div>
      )}
    </Page>
  );
};

interface PicksProps {
  readonly card: Card;
  readonly question: PhotoQuestion | undefined;
  readonly onAsk: (question: PhotoQuestion | undefined) => void;
}

/** The front is read as soon as it is there; the back with it. */
const Picks = ({ card, question, onAsk }: PicksProps) => (
  <>
    {question === undefined ? (
      <PhotoPick labels={words.front} onPick={(front) => onAsk({ card, front })} />
    ) : (
      <>
        {question.back === undefined ? (
          <PhotoPick labels={words.back} onPick={(back) => onAsk({ ...question, back })} />
        ) : null}
        <div className="actions">
          <Action kind="quiet" onPress={() => onAsk(undefined)}>
            {words.again}
          </Action>
        </div>
      </>
    )}
  </>
);

const HowFar = ({
  reading,
  onStop,
}: {
  readonly reading: PhotoReading;
  readonly onStop: () => void;
}) => {
  switch (reading.kind) {
    case 'at':
      return (
        <div className="photo-at">
          <p aria-busy="true">{words.steps[reading.step]}</p>
          <Action kind="quiet" onPress={onStop}>
            {words.stop}
          </Action>
        </div>
      );
    case 'refused':
      return <ProblemNotice problem={reading.problem} tone="stop" />;
    case 'broke':
      return (
        <Notice tone="stop" title={words.broke}>
          <p>
            {words.brokeMore} {reading.message}
          </p>
        </Notice>
      );
    case 'read':
      return reading.read.remarks.map((problem) => (
        <ProblemNotice
          key={problem.code}
          problem={problem}
          tone={reading.read.found ? 'care' : 'stop'}
        />
      ));
    case 'unasked':
      return null;
  }
};
