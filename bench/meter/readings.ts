import type { TubePoint } from '../../src/core/machine/machine.ts';
import { meterPlan } from '../../src/core/metering/meterPlan.ts';
import type { SeededRandom } from '../../src/num/seededRandom.ts';
import type { Tube } from './tubes.ts';

/** How a person and a meter read a current: scatter, part of it growing with the current, rounded to the scale. */
export interface Reader {
  readonly name: string;
  readonly sdMa: number;
  readonly sdShare: number;
  readonly readToMa: number;
}

/** The first is the one that is held to a figure; the others show what becomes of it elsewhere. */
export const readers: readonly Reader[] = [
  { name: '0.1 mA + 1 % of the reading, read to 0.1 mA', sdMa: 0.1, sdShare: 0.01, readToMa: 0.1 },
  { name: '0.2 mA everywhere, read to 0.1 mA', sdMa: 0.2, sdShare: 0, readToMa: 0.1 },
  { name: '0.15 mA everywhere, read to 0.5 mA', sdMa: 0.15, sdShare: 0, readToMa: 0.5 },
  {
    name: '0.05 mA + 2 % of the reading, read to 0.1 mA',
    sdMa: 0.05,
    sdShare: 0.02,
    readToMa: 0.1,
  },
];

export const readBy =
  ({ sdMa, sdShare, readToMa }: Reader, random: SeededRandom) =>
  (trueMa: number): number => {
    if (trueMa === 0) return 0;
    const read = trueMa + (sdMa + sdShare * trueMa) * random.normal();
    return Number((Math.max(1, Math.round(read / readToMa)) * readToMa).toFixed(3));
  };

/** Fires as the plan says until it wants no more. */
export const followPlan = (tube: Tube, read: (trueMa: number) => number): readonly TubePoint[] => {
  let readings: readonly TubePoint[] = [];
  for (let round = 0; round < 80; round += 1) {
    const plan = meterPlan({ ratedCurrentMa: tube.ratedMa, maxPowerPct: 100, readings });
    if (!plan.ok) throw new Error(plan.problem.code);
    const step = plan.value.steps.find(({ have, wanted }) => have < wanted);
    if (step === undefined) return readings;
    const currentMa = read(tube.drawsMa(step.powerPct));
    readings = [...readings, { powerPct: step.powerPct, currentMa }];
  }
  throw new Error(`the plan for ${tube.name} never ends`);
};
