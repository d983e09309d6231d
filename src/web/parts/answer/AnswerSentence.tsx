import type { FitAnswer } from '../../../core/cutmodel/fitAnswer.ts';
import { answerText as words } from '../../../words/en/screens/answer.ts';
import { problemInWords } from '../../state/inWords.ts';
import './answer.css';

export interface AnswerSentenceProps {
  readonly answer: FitAnswer | undefined;
  /** A newer answer is being reckoned. */
  readonly behind: boolean;
}

/** The answer in one sentence with its two figures, or why there is none; read out as it changes. */
export const AnswerSentence = ({ answer, behind }: AnswerSentenceProps) => (
  <div className="answer-sentence" role="status" aria-busy={behind}>
    {answer === undefined ? (
      <p className="answer-nothing">{behind ? words.reckoning : words.nothingYet}</p>
    ) : answer.recommended === null ? (
      <NoSetting answer={answer} />
    ) : (
      <>
        <p className="answer-cut">{words.cutAt(answer.recommended)}</p>
        <p className="answer-promise">
          {words.promised(answer.recommended.outOf100, answer.recommended.surePct)}
        </p>
        {answer.recommended.guess ? <p className="answer-guess">{words.guess}</p> : null}
      </>
    )}
  </div>
);

const NoSetting = ({ answer }: { readonly answer: FitAnswer }) => {
  const said = answer.reason === undefined ? undefined : problemInWords(answer.reason);
  return (
    <>
      <p className="answer-none">{words.noneYet}</p>
      {said === undefined ? null : (
        <p>
          {said.message} {said.remedy}
        </p>
      )}
    </>
  );
};
