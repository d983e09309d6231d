import type { BelievedChangeover } from '../../core/card/cardRequest.ts';
import type { FitAnswer } from '../../core/cutmodel/fitAnswer.ts';
import { priorMedianV50MmPerS, priors } from '../../core/cutmodel/priors.ts';
import { deliveryOf } from '../../core/machine/deliveredPower.ts';
import type { Machine } from '../../core/machine/machine.ts';
import { stockThicknessMm } from '../../core/stock/stockThickness.ts';
import type { Study } from '../../core/study/study.ts';

/**
 * Where half the shapes are believed to come out, power by power: from the answer where something was observed, else
 * from the prior for the material and thickness.
 */
export const believedOf = (
  study: Pick<Study, 'stock' | 'machine'>,
  answer: FitAnswer | undefined,
): BelievedChangeover => (answer === undefined ? fromPrior(study) : fromAnswer(study, answer));

const fromPrior = ({ stock, machine }: Pick<Study, 'stock' | 'machine'>): BelievedChangeover => {
  const delivered = deliveredOr(machine);
  const thicknessMm = stockThicknessMm(stock);
  return (powerPct) => ({
    v50MmPerS: priorMedianV50MmPerS(stock.material, thicknessMm, delivered(powerPct)),
    lnSd: priors.lnV50Sd,
  });
};

/** Along the fitted law: ln v50 rises with ln of the delivered power, and is known the worse the further away. */
const fromAnswer = (
  { machine }: Pick<Study, 'machine'>,
  { posterior }: FitAnswer,
): BelievedChangeover => {
  const delivered = deliveredOr(machine);
  const { lnV50At, powerExponent } = posterior;
  const atP0 = delivered(lnV50At.powerPct);
  return (powerPct) => {
    const lnPower = Math.log(delivered(powerPct) / atP0);
    return {
      v50MmPerS: Math.exp(lnV50At.mean + powerExponent.mean * lnPower),
      lnSd: Math.hypot(lnV50At.sd, powerExponent.sd * lnPower),
    };
  };
};

/** The delivered fraction; where the tube's readings do not reach, the setting itself. */
const deliveredOr = (machine: Machine): ((powerPct: number) => number) => {
  const delivered = deliveryOf(machine);
  return (powerPct) => Math.max(0.01, delivered(powerPct) ?? powerPct / 100);
};
