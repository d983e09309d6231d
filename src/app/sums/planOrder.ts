import type { CutStudy } from '../../core/cutmodel/cutStudy.ts';
import { planNext, type Plan, type PlanWeighs } from '../../core/plan/planNext.ts';
import type { PlanWish } from '../../core/plan/planWish.ts';
import { done, problemOf, type Outcome, type Problem } from '../../core/problem.ts';
import { acceptMaterial } from '../../core/stock/acceptMaterial.ts';
import type { EarlierSheet } from '../../core/study/earlierSheet.ts';
import { fitWithEarlier } from '../../core/study/answerWithEarlier.ts';
import { tooStrongAt } from '../../core/study/settingHeldBack.ts';

export interface PlanQuestion {
  /** With all that was cut and counted so far. */
  readonly study: CutStudy;
  readonly wish: PlanWish;
  readonly earlier: readonly EarlierSheet[];
  /** Absent: all that there is. */
  readonly weighs?: PlanWeighs;
}

export interface PlannedOrder {
  readonly plan: Plan;
  readonly ofMaterial: readonly Problem[];
}

/**
 * The next act of an order by all that has been cut and counted; nothing is stored. The promise is for the order's own
 * part. Refuses: what `acceptMaterial` refuses; a power above the machine’s limit, or one of which nothing is known;
 * `card-machine-too-strong`. ~0.5 s at first, then ~0.1 s beside the fit.
 */
export const planOrder = ({
  study,
  wish,
  earlier,
  weighs,
}: PlanQuestion): Outcome<PlannedOrder> => {
  const accepted = acceptMaterial(study.stock);
  if (!accepted.ok) return accepted;
  const above = aboveMachine(study);
  if (above !== undefined) return { ok: false, problem: above };
  const promise = { ...study.promise, partLengthMm: wish.partLengthMm };
  const fitted = fitWithEarlier({ ...study, promise }, earlier);
  const plan = planNext(fitted, wish, weighs);
  if (!plan.ok) return plan;
  const powerPct = plannedPowerPct(plan.value);
  const problem = powerPct === undefined ? undefined : tooStrongAt(fitted, powerPct);
  return problem === undefined
    ? done({ plan: plan.value, ofMaterial: accepted.value })
    : { ok: false, problem };
};

/** Whoever runs an order at a power that the machine is kept below is not planned another one in silence. */
const aboveMachine = ({ ask: { powerPct }, machine }: CutStudy): Problem | undefined =>
  powerPct !== undefined && powerPct > machine.maxPowerPct
    ? problemOf('fires-above-machine', { part: 'setting', powerPct, most: machine.maxPowerPct })
    : undefined;

/** A plan keeps to one power. */
const plannedPowerPct = ({ next }: Plan): number | undefined => {
  if (next.act === 'done') return undefined;
  const [first] = next.act === 'card' ? next.cells : next.settings;
  return first?.powerPct;
};
