import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cardShape } from '../../../formats/saved/card.ts';
import { crossed, describedCard, oneByOne } from './describedCard.ts';

const described = (rows: Parameters<typeof describedCard>[0]['rows']) =>
  describedCard({ code: 'AB3D', rows, shape: 'circle', sizeMm: 10 });

describe('a card cut elsewhere', () => {
  it('has a cell for every speed at every power, and a rung for each setting', () => {
    const card = described(crossed([20, 30], [10, 15, 20], 2));
    expect(card?.cells).toHaveLength(12);
    expect(card?.rungs.map(({ letter }) => letter)).toEqual(['A', 'B', 'C', 'D', 'E', 'F']);
    expect(card?.shapeLengthMm).toBeCloseTo(Math.PI * 10, 1); // circumference, Archimedes
  });

  it('may have cells missing, odd steps and one row only', () => {
    const card = described([
      [
        { powerPct: 30, speedMmPerS: 10, passes: 1 },
        null,
        { powerPct: 30, speedMmPerS: 11.3, passes: 1 },
      ],
    ]);
    expect(card?.cells.map(({ id }) => id)).toEqual(['A1', 'B1']);
    const [first, second] = card?.cells ?? [];
    expect((second?.xMm ?? 0) - (first?.xMm ?? 0)).toBeGreaterThan(30);
  });

  it('is none where there is no cell', () => {
    expect(described([[null]])).toBeUndefined();
  });

  it('is always one that can be saved, with cells apart and on the card', () => {
    const settings = fc.array(
      fc.record({
        powerPct: fc.integer({ min: 1, max: 100 }),
        speedMmPerS: fc.integer({ min: 1, max: 100 }),
        passes: fc.integer({ min: 1, max: 3 }),
      }),
      { minLength: 1, maxLength: 40 },
    );
    fc.assert(
      fc.property(settings, fc.integer({ min: 1, max: 3 }), (list, each) => {
        const card = described(oneByOne(list, each));
        expect(cardShape.safeParse(card).success).toBe(true);
        const places = new Set(card?.cells.map(({ xMm, yMm }) => `${xMm}/${yMm}`));
        expect(places.size).toBe(list.length * each);
        for (const { xMm, yMm } of card?.cells ?? []) {
          expect(xMm > 5 && xMm < (card?.widthMm ?? 0) - 5).toBe(true);
          expect(yMm > 5 && yMm < (card?.heightMm ?? 0) - 5).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });
});
