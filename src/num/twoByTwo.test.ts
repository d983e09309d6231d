import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { conditionalOddsRatio, fisherTest, sampleOddsRatio } from './twoByTwo.ts';

const count = fc.integer({ min: 0, max: 25 });
const tables = fc
  .record({ a: count, b: count, c: count, d: count })
  .filter(({ a, b, c, d }) => a + b > 0 && c + d > 0 && a + c > 0 && b + d > 0);

describe('a two-by-two table', () => {
  it('knows the lady tasting tea', () => {
    // Fisher 1935: three of four cups told rightly; 17/70 one-sided, 34/70 two-sided.
    const tea = { a: 3, b: 1, c: 1, d: 3 };
    expect(fisherTest(tea).greater).toBeCloseTo(17 / 70, 13);
    expect(fisherTest(tea).twoSided).toBeCloseTo(34 / 70, 13);
    // R 4.2.2 fisher.test: conditional odds ratio 6.408309.
    expect(conditionalOddsRatio(tea)?.estimate).toBeCloseTo(6.4083, 4);
    expect(sampleOddsRatio(tea)).toBe(9);
  });

  it('turns round with its rows', () => {
    fc.assert(
      fc.property(tables, ({ a, b, c, d }) => {
        const [one, other] = [
          { a, b, c, d },
          { a: c, b: d, c: a, d: b },
        ];
        expect(fisherTest(one).twoSided).toBeCloseTo(fisherTest(other).twoSided, 10);
        expect(fisherTest(one).less).toBeCloseTo(fisherTest(other).greater, 10);
        const [here, there] = [conditionalOddsRatio(one), conditionalOddsRatio(other)];
        expect(here === null).toBe(there === null);
        if (here === null || there === null) return;
        const nearInverse = (x: number, y: number): void => {
          if (x === 0 || x === Infinity) expect(y).toBe(1 / x);
          else expect(Math.abs(x * y - 1)).toBeLessThan(1e-9);
        };
        nearInverse(here.estimate, there.estimate);
        nearInverse(here.limits[0], there.limits[1]);
        nearInverse(here.limits[1], there.limits[0]);
      }),
    );
  });

  it('has exact limits that hold the estimate and exclude 1 just when a side is rarer than 2.5 %', () => {
    fc.assert(
      fc.property(tables, (table) => {
        const ratio = conditionalOddsRatio(table);
        if (ratio === null) return;
        const { estimate, limits } = ratio;
        expect(limits[0]).toBeLessThanOrEqual(estimate);
        expect(limits[1]).toBeGreaterThanOrEqual(estimate);
        const { less, greater } = fisherTest(table);
        if (Math.abs(greater - 0.025) > 1e-9) expect(limits[0] > 1).toBe(greater < 0.025);
        if (Math.abs(less - 0.025) > 1e-9) expect(limits[1] < 1).toBe(less < 0.025);
      }),
    );
  });

  it('says no ratio where the margins leave no choice', () => {
    expect(conditionalOddsRatio({ a: 3, b: 0, c: 4, d: 0 })).toBeNull();
  });
});
