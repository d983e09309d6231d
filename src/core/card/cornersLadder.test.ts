import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoRequest } from '../../../test/fixtures/cardRequest.ts';
import { cardParts } from './cardParts.ts';
import { cornersLadder, cornersSpeed } from './cornersLadder.ts';
import { designCard } from './designCard.ts';

const request = { ...demoRequest, vary: 'corners' as const };

describe('the card that varies power in corners', () => {
  it('holds speed and power, and goes down from equal powers to a third', () => {
    const settings = cornersLadder({ ...request, powerPct: 40 }, 5);
    expect(new Set(settings.map((one) => one.speedMmPerS)).size).toBe(1);
    expect(settings.map((one) => one.minPowerPct)).toEqual([undefined, 30, 22, 16, 12]);
    expect(settings.every((one) => one.powerPct === 40)).toBe(true);
  });

  it('runs where equal powers surely come out', () => {
    expect(cornersSpeed(request)).toBeLessThan(0.85 * request.believed(request.powerPct).v50MmPerS);
    expect(cornersSpeed({ ...request, speedMmPerS: 9 })).toBe(9);
  });

  it('spells its power in corners on the cell and in the layer’s name', () => {
    const outcome = designCard(request);
    if (!outcome.ok) throw new Error(outcome.problem.code);
    const { card } = outcome.value;
    const tried = card.rungs.map(({ setting }) => setting.minPowerPct ?? setting.powerPct);
    expect(new Set(tried).size).toBe(card.rungs.length);
    expect(Math.min(...tried)).toBeLessThan(0.4 * request.powerPct);
  });

  it('says once on the card what its short words for corner power mean, and is no larger for it', () => {
    const outcome = designCard(request);
    const plain = designCard({ ...request, vary: 'speed' });
    if (!outcome.ok || !plain.ok) throw new Error('no card');
    const { card } = outcome.value;
    const hints = (of: typeof card): number =>
      cardParts(of).marks.filter(({ of: { what } }) => what === 'hint').length;
    expect(hints(card)).toBe(hints(plain.value.card) + 1);
    expect(cardParts(card).marks.flatMap(({ polylines }) => polylines).length).toBeGreaterThan(0);
    const inside = cardParts(card)
      .marks.flatMap(({ polylines }) => polylines.flat())
      .every(([x, y]) => x >= 0 && x <= card.widthMm && y >= 0 && y <= card.heightMm);
    expect(inside).toBe(true);
  });

  it('never asks for more in corners than at full speed, nor twice for the same', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 100 }),
        fc.integer({ min: 1, max: 12 }),
        (powerPct, count) => {
          const settings = cornersLadder({ ...request, powerPct }, count);
          const powers = settings.map((one) => one.minPowerPct ?? one.powerPct);
          expect(settings.length).toBeLessThanOrEqual(count);
          expect(new Set(powers).size).toBe(powers.length);
          for (const power of powers) {
            expect(power).toBeGreaterThanOrEqual(1);
            expect(power).toBeLessThanOrEqual(powerPct);
          }
        },
      ),
    );
  });
});
