import { airRemarks } from './answerCutStudy.ts';
import { firingProblem } from '../../core/card/firingLimits.ts';
import { fit } from '../../core/cutmodel/fit.ts';
import type { CutStudy } from '../../core/cutmodel/cutStudy.ts';
import { orderAnswer, type OrderAnswer, type OrderWish } from '../../core/order/orderAnswer.ts';
import { done, type Outcome, type Problem } from '../../core/problem.ts';
import { acceptMaterial } from '../../core/stock/acceptMaterial.ts';

export interface OrderAnswered {
  /** No setting is an answer as well: it says why. */
  readonly answer: Outcome<OrderAnswer>;
  readonly ofMaterial: readonly Problem[];
}

/** What an order comes to by a study alone; nothing is stored. Refuses: what `acceptMaterial` refuses, and a setting that the machine may
 * not be set to. ~0.3 s. */
export const answerOrder = (study: CutStudy, wish: OrderWish): Outcome<OrderAnswered> => {
  const accepted = acceptMaterial(study.stock);
  const { machine } = study;
  const beyond =
    wish.setting && firingProblem('setting', wish.setting, { machine, mayOverdrive: true });
  if (beyond !== undefined) return { ok: false, problem: beyond };
  return accepted.ok
    ? done({
        answer: orderAnswer(fit(study), wish),
        ofMaterial: [...accepted.value, ...airRemarks(study)],
      })
    : accepted;
};
