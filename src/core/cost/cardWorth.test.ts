import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { NextCardAnswer } from '../cutmodel/fitAnswer.ts';
import { cardWorth, mostWorth, usualEffort } from './cardWorth.ts';

const proposed = (
  cells: number,
  settings: number,
  expectedGainPct: number,
  fastestNowMmPerS: number | null = 10,
): NextCardAnswer => ({
  cells: Array.from({ length: cells }, (_, i) => ({
    powerPct: 30,
    speedMmPerS: 12,
    passes: 1,
    rung: String.fromCharCode(65 + (i % settings)),
  })),
  settings,
  expectedGainPct,
  fastestNowMmPerS,
  worthCutting: expectedGainPct >= 2,
  reason: { code: 'cut-this-card', params: { gainPct: expectedGainPct } },
});

const order = { parts: 500, partLengthMm: 330 };

describe('whether another card pays', () => {
  it('sets the time saved on the order against the time it takes: worked by hand', () => {
    // 330 mm at 10 mm/s take 33 s, 10 % faster 30 s: 3 s a part, 1500 s on 500 parts; the card takes 300 + 6·30 + 12·15 s.
    const worth = cardWorth(proposed(12, 6, 10), order);
    expect(worth?.savedSecondsAPart).toBeCloseTo(3, 12);
    expect(worth?.savedSeconds).toBeCloseTo(1500, 9);
    expect(worth?.spentSeconds).toBe(660);
    expect(worth?.paysFromParts).toBe(220);
    expect(worth?.pays).toBe(true);
  });

  it('never pays without a gain, and is not asked where there is no answer yet', () => {
    const worth = cardWorth(proposed(12, 6, 0), order);
    expect(worth?.pays).toBe(false);
    expect(worth?.paysFromParts).toBeNull();
    expect(cardWorth(proposed(12, 6, 5, null), order)).toBeNull();
  });

  it('pays from the order it names on, and not before', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 40, noNaN: true }),
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.integer({ min: 20, max: 3000 }),
        (gainPct, speed, partLengthMm) => {
          const card = proposed(8, 4, gainPct, speed);
          const from = cardWorth(card, { parts: 1, partLengthMm })?.paysFromParts ?? 0;
          expect(cardWorth(card, { parts: from + 1, partLengthMm })?.pays).toBe(true);
          expect(cardWorth(card, { parts: from - 1, partLengthMm })?.pays).toBe(false);
        },
      ),
    );
  });

  it('takes the larger card only where what it gains more is worth the typing', () => {
    const [small, large] = [proposed(8, 4, 4), proposed(12, 6, 5)];
    expect(mostWorth([small, large], { parts: 50, partLengthMm: 200 })).toBe(small);
    expect(mostWorth([small, large], { parts: 5000, partLengthMm: 200 })).toBe(large);
    const none: readonly NextCardAnswer[] = [];
    expect(mostWorth(none, order)).toBeUndefined();
    // Where typing is free, so is the larger card.
    const free = { ...usualEffort, secondsPerSetting: 0, secondsPerCell: 0 };
    expect(mostWorth([small, large], { parts: 1, partLengthMm: 200 }, free)).toBe(large);
  });
});
