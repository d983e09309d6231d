import { describe, expect, it } from 'vitest';
import { sampleOrder, sampleTally } from '../../../test/samples/studies.ts';
import { orderSoFar } from '../study/orderSoFar.ts';
import type { RecordedTally } from '../study/study.ts';
import { climbOf, savedByClimbing } from './climb.ts';

const order = sampleOrder('o1', { parts: 900 });

const soFarOf = (
  sheets: readonly (readonly [speedMmPerS: number, over?: Partial<RecordedTally>])[],
) =>
  orderSoFar(
    order,
    sheets.map(([speedMmPerS, over], i) => ({
      ...sampleTally(`t${String(i)}`),
      ...{ orderId: 'o1', sheet: String(i), out: 30, hangs: 0, stays: 0, spoilt: 0 },
      setting: { powerPct: 34, speedMmPerS, passes: 1 },
      ...over,
    })),
  );

describe('the climb', () => {
  it('shows each sheet with its speed, what failed, and what was believed before', () => {
    const foretold = { outOf100: 98, promisedOutOf100: 97, surePct: 95, sureMmPerS: 12 };
    const climb = climbOf(
      soFarOf([
        [12, { foretold }],
        [14, { out: 28, hangs: 1, stays: 1 }],
      ]),
    );
    expect(climb).toMatchObject([
      { number: 1, speedMmPerS: 12, parts: 30, notOut: 0, keeps: { sureMmPerS: 12 } },
      { number: 2, speedMmPerS: 14, parts: 30, notOut: 2 },
    ]);
  });

  it('saves the shorter cuts less what was typed', () => {
    // 30 parts of 180 mm at 18 instead of 12 mm/s: 30·180·(1/12 − 1/18) = 150 s; one setting typed: 25 s.
    expect(savedByClimbing(order, soFarOf([[12], [18]]))).toBeCloseTo(125, 9);
    // The third sheet is cut with what is typed already.
    expect(savedByClimbing(order, soFarOf([[12], [18], [18]]))).toBeCloseTo(275, 9);
  });

  it('counts the knife and the cutting again against it, and nothing for a first sheet or for none', () => {
    const knifed = soFarOf([[12], [18, { out: 27, hangs: 2, stays: 1 }]]);
    expect(savedByClimbing(order, knifed)).toBeCloseTo(125 - 2 * 30 - 60, 9);
    expect(savedByClimbing(order, soFarOf([[12]]))).toBe(0);
    expect(savedByClimbing(order, soFarOf([]))).toBe(0);
  });

  it('is below nothing where it went slower', () => {
    expect(savedByClimbing(order, soFarOf([[12], [10]]))).toBeLessThan(0);
  });
});
