import type { Aim } from '../study/study.ts';
import { pointForAim } from './aims.ts';
import type { CutStudy } from './cutStudy.ts';
import { fit } from './fit.ts';
import type { FitAnswer } from './fitAnswer.ts';
import { answerFrom } from './fitStudy.ts';

/**
 * The answer that suits an aim. Where speed and power are left open, the point of the line that suits it is chosen among
 * the powers up to the highest at which something came out, and the same posterior is asked again at its power: the line
 * beyond is worth knowing, but nobody is sent to a power that nobody tried.
 */
export const answerForAim = (study: CutStudy, aim: Aim): FitAnswer => {
  const found = fit(study);
  const answer = answerFrom(found);
  const { powerPct, speedMmPerS } = study.ask;
  if (powerPct !== undefined || speedMmPerS !== undefined) return answer;
  const tried = Math.max(...found.evidence.out.map((spot) => spot.powerPct));
  const point = pointForAim(
    answer.line.filter((each) => each.powerPct <= tried + 1e-9),
    aim,
  );
  return point === undefined || point.powerPct === answer.recommended?.powerPct
    ? answer
    : answerFrom({ ...found, study: { ...study, ask: { powerPct: point.powerPct } } });
};
