import type { Problem } from '../../../core/problem.ts';
import { compareWords } from '../../../words/en/compare.ts';
import { firstAreas } from '../../../words/en/firstAreas.ts';
import { wordsIn } from '../../../words/inWords.ts';
import { Notice, type NoticeTone } from '../../parts/notice/Notice.tsx';

/** The words of a comparison come with its screen, so that nothing is said without them on a page opened anew; what is said
 * of its materials is among the first. */
const speak = wordsIn([...firstAreas, compareWords]);

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
