import { z } from 'zod';

import { isotonic } from '../../num/isotonic.ts';
import { areaUnder, monotoneCubic, slopeAt, valueAt } from '../../num/monotoneCubic.ts';
import { byKind } from './byKind.ts';

const numbers = z.array(z.number());

const pchip = z.object({ x: numbers, y: numbers, at: numbers }).transform(({ x, y, at }) => {
  const curve = monotoneCubic(x, y);
  return {
    slopesAtKnots: curve.slopes,
    values: at.map((place) => valueAt(curve, place)),
    derivativeAtFirst10: at.slice(0, 10).map((place) => slopeAt(curve, place)),
    integral: areaUnder(curve),
  };
});

const pooled = z
  .object({ y: numbers, weights: numbers, increasing: z.boolean().default(true) })
  .transform(({ y, weights, increasing }) => isotonic(y, weights, { increasing }));

/** Monotone cubics and isotonic regression. */
export const t09 = byKind({ pchip, isotonic: pooled });
