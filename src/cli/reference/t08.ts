import { z } from 'zod';

import { pairedTest } from '../../num/pairedTest.ts';
import { conditionalOddsRatio, fisherTest, sampleOddsRatio } from '../../num/twoByTwo.ts';
import { byKind } from './byKind.ts';

const count = z.int().min(0);

const mcnemar = z.object({ b: count, c: count }).transform(({ b, c }) => {
  const test = pairedTest(b, c);
  if (test === null) return { twoSidedExact: null };
  return {
    twoSidedExact: test.twoSided,
    oneSidedBnotMoreThan: test.oneSided,
    midP: test.midP,
    chi2Uncorrected: test.chiSquare,
    chi2Edwards: test.chiSquareCorrected,
  };
});

const fisher = z.object({ a: count, b: count, c: count, d: count }).transform((table) => {
  const ratio = conditionalOddsRatio(table);
  return {
    ...fisherTest(table),
    sampleOddsRatio: sampleOddsRatio(table),
    conditionalMLEOddsRatio: ratio?.estimate ?? null,
    conditionalCI95: ratio?.limits ?? null,
  };
});

/** Paired outcomes and two-by-two tables, exactly. */
export const t08 = byKind({ mcnemar, fisher });
