import type { Aim } from './aims.ts';
import { pointForAim } from './aims.ts';
import type { Fit } from './fit.ts';
import type { FitAnswer } from './fitAnswer.ts';
import { answerFrom } from './fitStudy.ts';
import { lineOf, recommend } from './recommend.ts';

/**
 * The answer that suits an aim. Where speed and power are left open, the point of the line that suits the aim is chosen among the powers up to the
 * highest at which something came out, and the posterior is asked at its power: the line beyond is worth knowing, but
 * nobody is sent to a power that nobody tried.
 */
export const answerForAim = (fitted: Fit, aim: Aim): FitAnswer => {
  const { study, evidence } = fitted;
  const line = lineOf(fitted);
  if (study.ask.powerPct !== undefined || study.ask.speedMmPerS !== undefined) {
    return answerFrom(fitted, line);
  }
  const tried = Math.max(...evidence.out.map((spot) => spot.powerPct));
  const point = pointForAim(
    line.filter((each) => each.powerPct <= tried + 1e-9),
    aim,
  );
  const open = recommend(fitted, line);
  const stays = point === undefined || (!('reason' in open) && open.powerPct === point.powerPct);
  return answerFrom(
    stays ? fitted : { ...fitted, study: { ...study, ask: { powerPct: point.powerPct } } },
    line,
    study.ask,
  );
};
