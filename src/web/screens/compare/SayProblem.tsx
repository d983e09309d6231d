import type { Problem } from '../../../core/problem.ts';
import { compareWords } from '../../../words/en/compare.ts';
import { wordsIn } from '../../../words/inWords.ts';
import { Notice, type NoticeTone } from '../../parts/notice/Notice.tsx';

/** The words of a comparison come with its screen, so that nothing is said without them on a page opened anew. */
const speak = wordsIn([compareWords]);

/** A remark or a refusal of a comparison. */
export const SayProblem = ({
  problem,
  tone,
}: {
  readonly problem: Problem;
  readonly tone: NoticeTone;
}) => {
  const { message, remedy } = speak(problem);
  return (
    <Notice tone={tone} title={message}>
      <p>{remedy}</p>
    </Notice>
  );
};
