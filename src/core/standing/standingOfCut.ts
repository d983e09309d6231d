import type { CutStudy } from '../cutmodel/cutStudy.ts';
import type { FitAnswer } from '../cutmodel/fitAnswer.ts';
import { reachOf } from '../cutmodel/reach.ts';
import { promiseOf } from '../study/promiseOf.ts';
import type { OrderSeen } from './evidence.ts';
import { answerSeen } from './evidenceFrom.ts';
import { standingOf } from './standingOf.ts';
import type { Standing } from './standing.ts';

/** How a sheet stands that came as a file, by its answer and its orders: these stand in the order in which they were cut. */
export const standingOfCut = (study: CutStudy, answer: FitAnswer): Standing => {
  const orders = study.tallies.map((tally, place): OrderSeen => {
    const id = String(place).padStart(5, '0');
    return { ...tally, id, at: id };
  });
  return standingOf({
    answer: answerSeen(answer, undefined, undefined),
    promise: promiseOf(study),
    orders,
    strips: [],
    reach: reachOf(study),
    isChartAlarmed: false,
  });
};
