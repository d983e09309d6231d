import type { Aim } from '../study/study.ts';
import { pointForAim } from './aims.ts';
import type { CutStudy } from './cutStudy.ts';
import { fit } from './fit.ts';
import type { FitAnswer } from './fitAnswer.ts';
import { answerFrom } from './fitStudy.ts';

/**
 * The answer that suits an aim. Where the power is left open and the aim is not the fastest, the point of the line that
 * suits it is chosen first and the same posterior is asked again at its power.
 */
export const answerForAim = (study: CutStudy, aim: Aim): FitAnswer => {
  const found = fit(study);
  const answer = answerFrom(found);
  const { powerPct, speedMmPerS } = study.ask;
  if (aim === 'fastest' || powerPct !== undefined || speedMmPerS !== undefined) return answer;
  const point = pointForAim(answer.line, aim);
  return point === undefined
    ? answer
    : answerFrom({ ...found, study: { ...study, ask: { powerPct: point.powerPct } } });
};
