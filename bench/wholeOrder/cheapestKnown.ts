import { usualPlanCosts } from '../../src/core/plan/planWish.ts';
import { referenceLengthMm } from '../../src/core/reading/promise.ts';
import type { OpenedWorkshop } from '../workshop.ts';
import type { BenchOrder } from './benchOrder.ts';

const costs = usualPlanCosts;

/** Of parts that meet a flaw four in five are seen and lost, and of the fifth half hang and half are lost. */
const hangOfFlawed = 0.1;

/** Speeds tried, as shares of the changeover of the reference shape. */
const tried = Array.from({ length: 200 }, (_, i) => 0.3 + 0.005 * i);

/**
 * Seconds of a whole order for one who knows all: the constant speed at the usual power with the least expected cost of a
 * good part by the workshop's truth; no card, nothing counted. `flawRate` is a reference length's.
 */
export const cheapestKnownS = (
  shop: OpenedWorkshop,
  { parts, lengthMm }: BenchOrder,
  flawRate: number,
): number => {
  const powerPct = shop.typicalPowerPct;
  const sound = (1 - flawRate) ** Math.max(1, lengthMm / referenceLengthMm);
  const changeoverMmPerS = shop.fastestKeeping(0.5, powerPct);
  const costsOfOne = tried.map((share) => {
    const speedMmPerS = changeoverMmPerS * share;
    const setting = { powerPct, speedMmPerS, passes: 1, air: true };
    const out = shop.trueOutShare(setting, lengthMm);
    const through = shop.trueThroughShare?.(setting, lengthMm) ?? out;
    const hangs = sound * (through - out) + hangOfFlawed * (1 - sound);
    const good = sound * out + hangs;
    const attemptS = lengthMm / speedMmPerS + costs.part;
    return (attemptS + hangs * costs.knife + (1 - good) * costs.recut) / good;
  });
  return parts * Math.min(...costsOfOne);
};
