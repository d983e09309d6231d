import { airRemarks } from './answerCutStudy.ts';
import { overdriveRemarks } from '../../core/card/overdriveRemarks.ts';
import { fit } from '../../core/cutmodel/fit.ts';
import type { CutStudy } from '../../core/cutmodel/cutStudy.ts';
import { orderAnswer, type OrderAnswer, type OrderWish } from '../../core/order/orderAnswer.ts';
import { done, type Outcome, type Problem } from '../../core/problem.ts';
import { acceptMaterial } from '../../core/stock/acceptMaterial.ts';
import { heldBackBy } from '../../core/study/settingHeldBack.ts';

export interface OrderAnswered {
  /** No setting is an answer as well: it says why. */
  readonly answer: Outcome<OrderAnswer>;
  readonly ofMaterial: readonly Problem[];
}

/** What an order comes to by a study alone; nothing is stored. Refuses: what `acceptMaterial` refuses, and a setting
 * that machine or sheet do not bear (`settingHeldBack`). ~0.3 s. */
export const answerOrder = (study: CutStudy, wish: OrderWish): Outcome<OrderAnswered> => {
  const accepted = acceptMaterial(study.stock);
  if (!accepted.ok) return accepted;
  const fitted = fit(study);
  const beyond = wish.setting && heldBackBy(fitted, wish.setting);
  if (beyond !== undefined) return { ok: false, problem: beyond };
  return done({
    answer: orderAnswer(fitted, wish),
    ofMaterial: [
      ...accepted.value,
      ...airRemarks(study),
      ...(wish.setting === undefined ? [] : overdriveRemarks([wish.setting], study.machine)),
    ],
  });
};
