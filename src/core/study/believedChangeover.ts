import type { BelievedChangeover } from '../card/cardRequest.ts';
import type { CutStudy } from '../cutmodel/cutStudy.ts';
import type { FitAnswer } from '../cutmodel/fitAnswer.ts';
import { expectedForCard } from '../cutmodel/priors.ts';
import { strengthOf } from '../cutmodel/strengthOf.ts';
import { deliveredOrSetting } from '../tube/deliveredPower.ts';

/** A changeover is not thought slower than so many standard deviations of what is expected of the material. */
const thinkableSds = 3;

type Sheet = Pick<CutStudy, 'stock' | 'machine'>;

const expectedOn = (
  { stock, machine }: Sheet,
  strength: ReturnType<typeof strengthOf>,
): BelievedChangeover => {
  const delivered = deliveredOrSetting(machine);
  return (powerPct) =>
    expectedForCard({
      material: stock.material,
      thicknessMm: stock.thicknessMm,
      deliveredFraction: delivered(powerPct),
      ...strength,
    });
};

/** The slowest changeover that is thinkable for a sheet on a machine, power by power, mm/s: whatever setting is said to have cut. */
export const thinkableFrom = (sheet: Sheet): ((powerPct: number) => number) => {
  const { nominalW } = sheet.machine;
  const before = expectedOn(sheet, nominalW === undefined ? {} : { nominalW });
  return (powerPct) => {
    const { v50MmPerS, lnSd } = before(powerPct);
    return v50MmPerS * Math.exp(-thinkableSds * lnSd);
  };
};

/** Before anything was cut: by material, thickness and machine. */
const beforehand = (sheet: Sheet): BelievedChangeover => {
  const expected = expectedOn(sheet, strengthOf(sheet.machine));
  const least = thinkableFrom(sheet);
  return (powerPct) => ({ ...expected(powerPct), thinkableFromMmPerS: least(powerPct) });
};

/**
 * Where half the shapes are believed to come out, power by power: along the fitted law where there is an answer, else
 * by the prior for material and thickness. Known the worse the further the power lies from where it was fitted.
 */
export const believedChangeover = (
  sheet: Sheet,
  answer: FitAnswer | undefined,
): BelievedChangeover => {
  if (answer === undefined) return beforehand(sheet);
  const delivered = deliveredOrSetting(sheet.machine);
  const least = thinkableFrom(sheet);
  const { lnV50At, powerExponent } = answer.posterior;
  return (powerPct) => {
    const lnPower = Math.log(delivered(powerPct) / delivered(lnV50At.powerPct));
    return {
      v50MmPerS: Math.exp(lnV50At.mean + powerExponent.mean * lnPower),
      lnSd: Math.hypot(lnV50At.sd, powerExponent.sd * lnPower),
      powerExponent: powerExponent.mean,
      thinkableFromMmPerS: least(powerPct),
    };
  };
};
