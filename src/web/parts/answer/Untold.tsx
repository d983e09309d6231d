import type { FitAnswer } from '../../../core/cutmodel/fitAnswer.ts';
import { cellOrigins } from '../../../core/study/toCutStudy.ts';
import type { Study } from '../../../core/study/study.ts';
import { listed, earlierWords, mistakeWords, answerText as words } from '../../../words/texts.ts';
import type { Problem } from '../../../core/problem.ts';
import { wordsIn } from '../../../words/inWords.ts';
import { heldTogether, problemInWords } from '../../state/inWords.ts';
import { More } from '../more/More.tsx';

export interface UntoldProps {
  readonly study: Study;
  readonly answer: FitAnswer;
}

/** What the cards could not tell, and why; and which cells to look at again. */
export const Untold = ({ study, answer }: UntoldProps) => {
  const doubtful = cellsNamed(study, answer, 'look-again');
  const said = answer.warnings.filter(({ code }) => code !== 'look-again' || doubtful === '');
  if (said.length === 0 && doubtful === '') return null;
  const [first, rest] = [said.slice(0, 2), said.slice(2)];
  return (
    <section className="section">
      <h3>{words.untold}</h3>
      <ul className="answer-untold">
        {doubtful === '' ? null : <li>{words.lookAgain(doubtful)}</li>}
        <Said problems={first} />
      </ul>
      {rest.length === 0 ? null : (
        <More title={words.untoldMore(rest.length)}>
          <ul className="answer-untold">
            <Said problems={rest} />
          </ul>
        </More>
      )}
    </section>
  );
};

const Said = ({ problems }: { readonly problems: readonly Problem[] }) =>
  problems.map((problem, i) => {
    const { message, remedy } = Object.hasOwn(ownWords, problem.code)
      ? heldTogether(inOwnWords(problem))
      : problemInWords(problem);
    return (
      <li key={`${problem.code}${i}`}>
        {message} <span className="soft">{remedy}</span>
      </li>
    );
  });

/** These words come with the answer itself, since they may be needed before anything is tapped. */
const ownWords = { ...earlierWords, ...mistakeWords };
const inOwnWords = wordsIn(ownWords);

/** Cells by their names, with the card's code where there is more than one card. */
const cellsNamed = (
  study: Study,
  { remarks }: FitAnswer,
  kind: FitAnswer['remarks'][number]['kind'],
): string => {
  const origins = cellOrigins(study);
  const names = remarks.flatMap((remark) => {
    const origin = remark.kind === kind ? origins[remark.cellIndex] : undefined;
    if (origin === undefined) return [];
    return [study.cards.length > 1 ? `${origin.cell} of ${origin.cardCode}` : origin.cell];
  });
  return listed(names);
};
