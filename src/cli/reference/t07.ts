import { z } from 'zod';

import {
  clopperPearson,
  clopperPearsonLower,
  jeffreys,
  jeffreysWithEnds,
  wilson,
} from '../../num/binomialInterval.ts';
import { toleranceFactor } from '../../num/noncentralT.ts';
import { successRunSize } from '../../num/successRun.ts';
import { byKind } from './byKind.ts';

const share = z.number().gt(0).lt(1);
const levels = ['0.90', '0.95', '0.99'] as const;

const interval = z
  .object({ x: z.int().min(0), n: z.int().min(1) })
  .refine(({ x, n }) => x <= n, 'x is at most n')
  .transform((count) =>
    Object.fromEntries(
      levels.map((level) => {
        const confidence = Number(level);
        return [
          level,
          {
            clopperPearson: clopperPearson(count, confidence),
            wilson: wilson(count, confidence),
            jeffreysEqualTailed: jeffreys(count, confidence),
            jeffreysBrownCaiDasGupta: jeffreysWithEnds(count, confidence),
            clopperPearsonOneSidedLower: clopperPearsonLower(count, confidence),
          },
        ];
      }),
    ),
  );

const sampleSize = z.object({ confidence: share, reliability: share }).transform((wish) => ({
  zeroFailures: successRunSize(wish),
  oneFailure: successRunSize({ ...wish, failures: 1 }),
  twoFailures: successRunSize({ ...wish, failures: 2 }),
  threeFailures: successRunSize({ ...wish, failures: 3 }),
}));

const factors = z
  .object({ coverage: share, confidence: share, n: z.array(z.int().min(2)) })
  .transform(({ n, ...wish }) => ({ k: n.map((size) => toleranceFactor(size, wish)) }));

/** Shares out of counts, how many trials show a reliability, one-sided tolerance factors. */
export const t07 = byKind({ interval, 'sample-size': sampleSize, 'tolerance-factor': factors });
