import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultPromise } from '../reading/promise.ts';
import type { Tally } from '../reading/tally.ts';
import { checkPromise } from './promiseCheck.ts';

const tally = (out: number, hangs = 0, stays = 0, spoilt = 0): Tally => ({
  setting: { powerPct: 30, speedMmPerS: 14, passes: 1 },
  out,
  hangs,
  stays,
  spoilt,
  partLengthMm: 60,
});
const check = (...tallies: Tally[]) => checkPromise(defaultPromise, tallies);

describe('the promise held against tallies', () => {
  it('says nothing of nothing', () => {
    expect(check()).toEqual({
      parts: 0,
      out: 0,
      notOut: 0,
      spoilt: 0,
      allowedFor: 0,
      verdict: 'nothing-tallied',
    });
    expect(check(tally(0, 0, 0, 7)).verdict).toBe('nothing-tallied');
  });

  it('agrees with the binomial sum written out', () => {
    // P(X ≥ 2 | n = 10, p = 0.03) = 1 − 0.97^10 − 10·0.03·0.97^9
    const byHand = 100 * (1 - 0.97 ** 10 - 10 * 0.03 * 0.97 ** 9);
    expect(check(tally(8, 1, 1)).chanceOfSoManyPct).toBeCloseTo(byHand, 9);
  });

  it('calls 97 in 100 borne out from 99 clean parts in a row, and not from 98', () => {
    // Success run: ln 0.05 / ln 0.97 = 98.4, so 99 parts (the rule of success-run testing).
    expect(check(tally(99)).verdict).toBe('borne-out');
    expect(check(tally(98)).verdict).toBe('as-promised');
  });

  it('knows few from many, and bad from unlucky', () => {
    expect(check(tally(20)).verdict).toBe('too-few-to-say');
    expect(check(tally(197, 2, 0, 1)).verdict).toBe('as-promised');
    expect(check(tally(180, 15, 5)).verdict).toBe('worse-than-promised');
    expect(check(tally(2, 3)).verdict).toBe('worse-than-promised');
  });

  it('reads the same from one tally or from its parts', () => {
    const count = fc.nat(300);
    fc.assert(
      fc.property(count, count, count, count, (a, b, c, d) => {
        expect(check(tally(a, b), tally(c, d))).toEqual(check(tally(a + c, b + d)));
      }),
    );
  });

  it('never gets likelier when one more part fails', () => {
    fc.assert(
      fc.property(fc.nat(200), fc.nat(40), (out, bad) => {
        const before = check(tally(out + 1, bad)).chanceOfSoManyPct ?? 0;
        const after = check(tally(out, bad + 1)).chanceOfSoManyPct ?? 0;
        expect(after).toBeLessThanOrEqual(before + 1e-9);
      }),
    );
  });
});
