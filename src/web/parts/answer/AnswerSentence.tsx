import type { ProvenSetting } from '../../../core/book/provenSetting.ts';
import type { Setting } from '../../../core/machine/setting.ts';
import { answerHeadText as words } from '../../../words/texts.ts';
import { withWords } from '../../state/withWords.ts';
import type { AnswerStanding } from '../../state/useAnswer.ts';
import { Fetched } from '../fetched/Fetched.tsx';
import { Said } from '../said/Said.tsx';
import './answer.css';

/** Comes with the first answer, not with the page. */
export const answerSaid = async () => (await import('./AnswerSaid.tsx')).AnswerSaid;
const AnswerSaid = withWords(answerSaid);

export interface AnswerSentenceProps {
  readonly answer: AnswerStanding | undefined;
  /** A newer answer is being worked out. */
  readonly behind: boolean;
  /** The speed at the head; absent: that of the standing. */
  readonly speed?: Setting | undefined;
  readonly kept?: ProvenSetting | undefined;
}

/** The answer in one sentence with its two figures, or why there is none; read out as it changes. */
export const AnswerSentence = ({
  answer,
  behind,
  speed = answer?.standing.run,
  kept,
}: AnswerSentenceProps) => (
  <Said what="answer" className="answer-sentence" isBehind={behind}>
    {answer === undefined || (speed === undefined && behind) ? (
      // Where no setting could be named, what was missing may just have been said.
      <Waiting>{behind ? words.calculating : words.nothingYet}</Waiting>
    ) : (
      <Fetched waiting={<Waiting>{words.calculating}</Waiting>}>
        <AnswerSaid answer={answer} speed={speed} kept={kept} />
      </Fetched>
    )}
  </Said>
);

const Waiting = ({ children }: { readonly children: string }) => (
  <p className="answer-nothing">{children}</p>
);
