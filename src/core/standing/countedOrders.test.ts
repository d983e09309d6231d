import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultPromise } from '../reading/promise.ts';
import type { Tally } from '../reading/tally.ts';
import { countOrders, shareAllowedToFail } from './countedOrders.ts';
import { whatOrdersSay } from './ordersSay.ts';

const promise = { ...defaultPromise, partLengthMm: 160 };

const tally = (out: number, notOut: number, partLengthMm = 160): Tally => ({
  setting: { powerPct: 30, speedMmPerS: 12, passes: 1 },
  out,
  hangs: notOut,
  stays: 0,
  spoilt: 0,
  partLengthMm,
});

describe('orders held against a promise', () => {
  it('says how likely a count is: exactly binomial', () => {
    // P(X ≥ 12) of 200 at 3 in 100 by the binomial sum: 1 − Σ_{k<12} C(200,k) .03^k .97^(200−k).
    let below = 0;
    let term = 0.97 ** 200;
    for (let k = 0; k < 12; k += 1) {
      below += term;
      term *= ((200 - k) / (k + 1)) * (0.03 / 0.97);
    }
    const counted = countOrders(promise, [tally(188, 12)]);
    expect(counted.allowedFor).toBeCloseTo(6, 9);
    expect(counted.chanceOfSoManyPct).toBeCloseTo(100 * (1 - below), 8);
  });

  it('is borne out by 99 clean parts in a row at 97 in 100, 95 % sure, and not by 98', () => {
    // ln .05 / ln .97 = 98.4: the textbook count of clean parts.
    expect(countOrders(promise, [tally(99, 0)]).borneOut).toBe(true);
    expect(countOrders(promise, [tally(98, 0)]).borneOut).toBe(false);
  });

  it('lets a part of twice the length fail as often as one of two', () => {
    const one = shareAllowedToFail(promise, 160);
    expect(1 - shareAllowedToFail(promise, 320)).toBeCloseTo((1 - one) ** 2, 12);
    expect(one).toBeCloseTo(0.03, 12);
    // A part shorter than the card's shape counts as one shape.
    expect(shareAllowedToFail(promise, 20)).toBe(shareAllowedToFail(promise, 60));
  });

  it('gives a longer part no fewer chances to fail', () => {
    const mm = fc.double({ min: 20, max: 2000, noNaN: true });
    fc.assert(
      fc.property(mm, mm, (a, b) => {
        expect(shareAllowedToFail(promise, Math.max(a, b))).toBeGreaterThanOrEqual(
          shareAllowedToFail(promise, Math.min(a, b)),
        );
      }),
    );
  });

  it('says nothing of nothing, and of parts lost to pockets alone', () => {
    expect(whatOrdersSay(promise, [])).toEqual({ kind: 'none' });
    expect(whatOrdersSay(promise, [{ ...tally(0, 0), spoilt: 4 }])).toEqual({ kind: 'none' });
  });

  it('remembers that it slipped, and calls a whole bad history failed', () => {
    const good = tally(400, 2);
    expect(whatOrdersSay(promise, [good, good, tally(185, 15), good, good]).kind).toBe('slipped');
    expect(whatOrdersSay(promise, [tally(185, 15), tally(99, 1)]).kind).toBe('failed');
    expect(whatOrdersSay(promise, [good, tally(189, 11)]).kind).toBe('unlucky');
  });
});
