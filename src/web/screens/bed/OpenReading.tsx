import { progress } from '../../../core/reading/progress.ts';
import { readCard } from '../../../core/reading/readCard.ts';
import type { Study } from '../../../core/study/study.ts';
import { bedText as words } from '../../../words/en/screens/study.ts';
import { AnswerSentence } from '../../parts/answer/AnswerSentence.tsx';
import { useAnswer } from '../../state/useAnswer.ts';
import { useStudy } from '../../state/workshop.tsx';

/** A sheet from which nothing was kept yet: how far its card is read, and the answer so far. */
export const OpenReading = ({ studyId }: { readonly studyId: string }) => {
  const { study } = useStudy(studyId);
  return study === undefined ? null : <SoFar study={study} />;
};

const SoFar = ({ study }: { readonly study: Study }) => {
  const { answer, behind } = useAnswer(study);
  const card = study.cards.at(-1);
  if (card === undefined) return null;
  const { read, cells } = progress(readCard(card, study.events).cells);
  return (
    <div className="kept">
      <AnswerSentence answer={answer} behind={behind} />
      <p className="soft">{words.read(read, cells)}</p>
    </div>
  );
};
