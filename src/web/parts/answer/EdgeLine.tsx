import type { FitAnswer } from '../../../core/cutmodel/fitAnswer.ts';
import { answerText as words } from '../../../words/texts.ts';

/** How the edge comes out at the fastest that holds, where edges were graded; a setting with a better one has a row of its own. */
export const EdgeLine = ({ recommended, edge }: Pick<FitAnswer, 'recommended' | 'edge'>) => {
  if (edge === undefined || recommended === null) return null;
  const { best, here, edges, wanted, taped, preferred } = edge;
  return (
    <p className="small">
      {here === null
        ? words.edge.notYet(edges, wanted)
        : words.edge.here(best, here, recommended, taped)}
      {here === null || preferred !== undefined ? '' : ` ${words.edge.noBetter}`}
    </p>
  );
};
