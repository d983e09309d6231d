import { lazy, useEffect } from 'react';
import type { Study } from '../../../core/study/study.ts';
import { answerText as words } from '../../../words/en/screens/answer.ts';
import { fetchPart } from '../../state/fetchPart.ts';
import { useAnswer } from '../../state/useAnswer.ts';
import { Fetched } from '../fetched/Fetched.tsx';
import { Notice } from '../notice/Notice.tsx';
import { AnswerBar } from './AnswerBar.tsx';
import { AnswerSentence } from './AnswerSentence.tsx';
import { Questioned } from './Questioned.tsx';

/** Fetched with the first tap: the first screen needs none of it to be tapped. */
const answered = () => fetchPart(() => import('./Answered.tsx'));
const Answered = lazy(answered);

export interface AnswerPanelProps {
  readonly study: Study;
}

/** The answer to a study, live: the sentence first, then what to do with it. */
export const AnswerPanel = ({ study }: AnswerPanelProps) => {
  const { answer, behind, broke, earlier } = useAnswer(study);
  useEffect(() => {
    if (behind) void answered().catch(() => undefined);
  }, [behind]);
  return (
    <section className="answer" aria-labelledby="answer-title">
      <h2 id="answer-title" className="unseen">
        {words.title}
      </h2>
      <AnswerSentence answer={answer} behind={behind} />
      <AnswerBar answer={answer} />
      {broke === undefined ? null : (
        <Notice tone="stop">
          <p>{words.broke(broke)}</p>
        </Notice>
      )}
      <Questioned study={study} />
      {answer === undefined ? null : (
        <Fetched>
          <Answered study={study} answer={answer} behind={behind} earlier={earlier} />
        </Fetched>
      )}
    </section>
  );
};
