import type { BelievedChangeover } from '../card/cardRequest.ts';
import type { CutStudy } from '../cutmodel/cutStudy.ts';
import type { FitAnswer } from '../cutmodel/fitAnswer.ts';
import { priorMedianV50MmPerS, priors } from '../cutmodel/priors.ts';
import { deliveryOf } from '../machine/deliveredPower.ts';
import type { Machine } from '../machine/machine.ts';

/**
 * Where half the shapes are believed to come out, power by power: along the fitted law where there is an answer, else
 * by the prior for material and thickness. Known the worse the further the power lies from where it was fitted.
 */
export const believedChangeover = (
  { stock, machine }: Pick<CutStudy, 'stock' | 'machine'>,
  answer: FitAnswer | undefined,
): BelievedChangeover => {
  const delivered = deliveredOr(machine);
  if (answer === undefined) {
    return (powerPct) => ({
      v50MmPerS: priorMedianV50MmPerS(stock.material, stock.thicknessMm, delivered(powerPct)),
      lnSd: priors.lnV50Sd,
    });
  }
  const { lnV50At, powerExponent } = answer.posterior;
  return (powerPct) => {
    const lnPower = Math.log(delivered(powerPct) / delivered(lnV50At.powerPct));
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
