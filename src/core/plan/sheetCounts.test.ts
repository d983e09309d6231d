import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../num/seededRandom.ts';
import { sheetPlaces } from './planPoints.ts';
import { playSheet, weighedBy, type CutOdds } from './sheetCounts.ts';

/** Two workshops without scatter of sheets: of one nine parts in ten come out, of the other half. */
const oddsOf = (outs: readonly number[]): CutOdds['odds'] => {
  const over = (p: (out: number) => number): Float64Array =>
    Float64Array.from(sheetPlaces.flatMap(() => outs.map(p)));
  const [out, hangs, stays] = [over((o) => o), over((o) => (1 - o) / 2), over((o) => (1 - o) / 2)];
  const ln = (odds: Float64Array): Float64Array => odds.map((p) => Math.log(p));
  return { out, hangs, stays, lnOut: ln(out), lnHangs: ln(hangs), lnStays: ln(stays) };
};

describe('what a counted sheet teaches', () => {
  const cuts = [{ odds: oddsOf([0.9, 0.5]), parts: 4 }];

  it('weighs workshops by Bayes’ rule', () => {
    // 3 out and 1 hanging: 0.9³·0.05 against 0.5³·0.25, from even odds.
    const after = weighedBy(new Float64Array([0.5, 0.5]), cuts, [{ out: 3, hangs: 1, stays: 0 }]);
    const [a, b] = [0.9 ** 3 * 0.05, 0.5 ** 3 * 0.25];
    expect(after[0]).toBeCloseTo(a / (a + b), 12);
    expect((after[0] ?? 0) + (after[1] ?? 0)).toBeCloseTo(1, 12);
  });

  it('believes the better workshop the less, the more fails', () => {
    const better = [4, 3, 2, 1, 0].map(
      (out) =>
        weighedBy(new Float64Array([0.5, 0.5]), cuts, [{ out, hangs: 4 - out, stays: 0 }])[0] ?? 0,
    );
    expect(better).toEqual([...better].sort((a, b) => b - a));
  });

  it('cuts as many as it should, with the shares that it should', () => {
    const random = seededRandom(5);
    let out = 0;
    for (let sheet = 0; sheet < 2000; sheet += 1) {
      const [end] = playSheet(cuts, 1, 2, random);
      expect((end?.out ?? 0) + (end?.hangs ?? 0) + (end?.stays ?? 0)).toBe(4);
      out += end?.out ?? 0;
    }
    // 8000 parts at one half: within four standard errors.
    expect(Math.abs(out / 8000 - 0.5)).toBeLessThan(4 * Math.sqrt(0.25 / 8000));
  });
});
