import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { goodPartCost } from './goodPartCost.ts';
import { partCost, usualAssumptions } from './partCost.ts';

describe('what a good part costs', () => {
  it('is that of a part where none is lost, and of two where every second one is', () => {
    const way = { seconds: 10, shareOfRated: 0.4, knifeShare: 0.1 };
    const one = partCost(way, usualAssumptions).total;
    expect(goodPartCost({ ...way, lostShare: 0 }, usualAssumptions)).toMatchObject({
      recut: 0,
      total: one,
    });
    expect(goodPartCost({ ...way, lostShare: 0.5 }, usualAssumptions).total).toBeCloseTo(2 * one);
    expect(goodPartCost({ ...way, lostShare: 1 }, usualAssumptions).total).toBe(Infinity);
  });

  it('is never less for losing more, and the sum of its terms', () => {
    const share = fc.double({ min: 0, max: 0.9, noNaN: true });
    fc.assert(
      fc.property(share, share, (a, b) => {
        const at = (lostShare: number) =>
          goodPartCost(
            { seconds: 20, shareOfRated: 0.3, knifeShare: 0.05, lostShare },
            usualAssumptions,
          );
        expect(at(Math.max(a, b)).total).toBeGreaterThanOrEqual(at(Math.min(a, b)).total);
        const { time, knife, tube, sheet, recut, total } = at(a);
        expect(time + knife + tube + sheet + recut).toBeCloseTo(total, 12);
      }),
    );
  });
});
