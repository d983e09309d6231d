import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { spearmanKarber, type DoseResponse } from './spearmanKarber.ts';

const doses = [7.8, 13, 22, 36, 60, 100];
const of10 = (responded: readonly number[]): readonly DoseResponse[] =>
  responded.map((count, i) => ({ x: Math.log(doses[i] ?? NaN), trials: 10, responded: count }));

describe('spearmanKarber', () => {
  it('gives the published means and limits', () => {
    // Hamilton, Russo & Thurston 1977, data set 4d, as printed: 29.55 (24.33 to 35.88), trimmed 29.69, 29.79, 29.74.
    const data = of10([0, 0, 2, 7, 10, 10]);
    const printed = [29.55, 29.69, 29.79, 29.74];
    for (const [i, trim] of [0, 0.05, 0.1, 0.2].entries()) {
      expect(Math.exp(spearmanKarber(data, trim)?.mean ?? NaN)).toBeCloseTo(printed[i] ?? NaN, 2);
    }
    const [low = NaN, high = NaN] = spearmanKarber(data)?.limits ?? [];
    expect(Math.exp(low)).toBeCloseTo(24.33, 2);
    expect(Math.exp(high)).toBeCloseTo(35.88, 2);
  });

  it('lies in the middle of a symmetric response, however much is trimmed', () => {
    const even = (responded: readonly number[]): readonly DoseResponse[] =>
      responded.map((count, i) => ({ x: i, trials: 10, responded: count }));
    for (const trim of [0, 0.1, 0.25]) {
      expect(spearmanKarber(even([0, 3, 5, 7, 10]), trim)?.mean).toBeCloseTo(2, 12);
    }
  });

  it('moves with the scale and stays within the doses', () => {
    const counts = fc.array(fc.integer({ min: 0, max: 10 }), { minLength: 4, maxLength: 4 });
    fc.assert(
      fc.property(counts, fc.double({ min: -3, max: 3, noNaN: true }), (inner, shift) => {
        const data = of10([0, ...inner, 10]);
        const moved = data.map((one) => ({ ...one, x: one.x + shift }));
        const found = spearmanKarber(data);
        expect(spearmanKarber(moved)?.mean).toBeCloseTo((found?.mean ?? NaN) + shift, 9);
        expect(spearmanKarber(moved)?.standardError).toBeCloseTo(found?.standardError ?? NaN, 9);
        expect(found?.mean).toBeGreaterThanOrEqual(Math.log(7.8));
        expect(found?.mean).toBeLessThanOrEqual(Math.log(100));
      }),
    );
  });

  it('refuses responses that do not reach from the trim to the rest', () => {
    expect(spearmanKarber(of10([1, 2, 3, 7, 10, 10]))).toBeNull();
    expect(spearmanKarber(of10([0, 2, 3, 7, 8, 9]), 0.05)).toBeNull();
    expect(spearmanKarber(of10([1, 2, 3, 7, 10, 10]), 0.2)).not.toBeNull();
  });
});
