import { z } from 'zod';

import { cusumChart } from '../../num/cusum.ts';
import { ewmaChart } from '../../num/ewma.ts';
import { individualsChart } from '../../num/individualsChart.ts';
import { cusumRunLength, ewmaRunLength, twoSidedCusumRunLength } from '../../num/runLength.ts';
import { numbers } from './binaryRows.ts';
import { byKind } from './byKind.ts';

const ewma = z
  .object({ x: numbers, lam: z.number(), target: z.number(), sigma: z.number(), L: z.number() })
  .transform(({ x, lam, target, sigma, L }) => {
    const { averages, ...chart } = ewmaChart(x, { lambda: lam, target, sigma, width: L });
    return { ewma: averages, ...chart };
  });

const cusum = z
  .object({ x: numbers, target: z.number(), k: z.number(), h: z.number() })
  .transform(({ x, target, k, h }) => {
    const { high, low, firstSignal } = cusumChart(x, { target, slack: k, limit: h });
    return { sHi: high, sLo: low, firstSignal };
  });

const individuals = z.object({ x: numbers.min(2) }).transform(({ x }) => {
  const chart = individualsChart(x);
  return {
    mean: chart?.mean,
    meanMovingRange: chart?.meanMovingRange,
    limits: chart?.limits,
    mrUpperLimit: chart?.movingRangeUpperLimit,
  };
});

const cusumLengths = z
  .object({ k: z.number(), h: z.number(), shifts: numbers, sided: z.number().default(2) })
  .transform(({ k, h, shifts, sided }) => {
    const lengthOf = sided === 1 ? cusumRunLength : twoSidedCusumRunLength;
    return { arl: shifts.map((shift) => lengthOf({ slack: k, limit: h, shift }).mean) };
  });

const ewmaLengths = z
  .object({ lam: z.number(), L: z.number(), shifts: numbers })
  .transform(({ lam, L, shifts }) => ({
    arl: shifts.map((shift) => ewmaRunLength({ lambda: lam, width: L, shift }).mean),
  }));

/** Control charts and their average run lengths. */
export const t12 = byKind({
  ewma,
  cusum,
  individuals,
  'arl-cusum': cusumLengths,
  'arl-ewma': ewmaLengths,
});
