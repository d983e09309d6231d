import type { Problem } from '../../../core/problem.ts';
import { cardText as words } from '../../../words/texts.ts';
import { problemInWords } from '../../state/inWords.ts';
import '../../parts/answer/answer.css';

/** What is to be said of a card that was designed: what was changed in the wish, and what it lacks. */
export const Remarks = ({ remarks }: { readonly remarks: readonly Problem[] }) =>
  remarks.length === 0 ? null : (
    <section className="section">
      <h2 className="answer-minor">{words.say}</h2>
      <ul className="answer-untold">
        {remarks.map((problem, i) => {
          const { message, remedy } = problemInWords(problem);
          return (
            <li key={`${problem.code}${i}`}>
              {message} <span className="soft">{remedy}</span>
            </li>
          );
        })}
      </ul>
    </section>
  );
