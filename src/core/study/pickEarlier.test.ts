import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { EarlierSheet } from './earlierSheet.ts';
import { countEarlier } from './historyOf.ts';
import { mostEarlier, pickEarlier } from './pickEarlier.ts';

const cell = { powerPct: 30, speedMmPerS: 12, passes: 1, thicknessMm: 3, grade: 'out' } as const;
const day = (n: number): string => new Date(Date.UTC(2025, 0, 1 + n)).toISOString();
const sheet = (n: number, count = 12, of: EarlierSheet['of'] = 'cards'): EarlierSheet => ({
  of,
  batch: 's1/spring',
  sheet: `no. ${String(n)}`,
  lastReadAt: day(n),
  cuts: [{ cell, count }],
});
const names = (sheets: readonly EarlierSheet[]) => sheets.map(({ lastReadAt }) => lastReadAt);

describe('the sheets that an answer leans on', () => {
  it('are those last read, and no more than six', () => {
    const sheets = [3, 1, 9, 4, 7, 2, 8, 5].map((n) => sheet(n));
    expect(names(pickEarlier(sheets))).toEqual([9, 8, 7, 5, 4, 3].map(day));
  });

  it('leave room for cards beside the newest orders', () => {
    const orders = [20, 21, 22, 23].map((n) => sheet(n, 200, 'order'));
    const cards = [1, 2, 3, 4, 5].map((n) => sheet(n));
    expect(names(pickEarlier([...orders, ...cards]))).toEqual([23, 22, 5, 4, 3, 2].map(day));
  });

  it('are whole: what is too great is passed over, what says nothing left out', () => {
    const spoilt: EarlierSheet = {
      ...sheet(9),
      cuts: [
        {
          cell: { powerPct: 30, speedMmPerS: 12, passes: 1, thicknessMm: 3, spoilt: 'clip' },
          count: 5,
        },
      ],
    };
    const sheets = [spoilt, sheet(8, 150), sheet(7, 51), sheet(6, 50), sheet(5, 2001, 'order')];
    expect(names(pickEarlier(sheets))).toEqual([8, 6].map(day));
  });

  it('are the same in whatever order they are found, within the bounds, and as many as fit', () => {
    const some = fc.uniqueArray(
      fc.tuple(fc.nat(400), fc.integer({ min: 1, max: 120 }), fc.constantFrom('cards', 'order')),
      { selector: ([n]) => n, maxLength: 20 },
    );
    fc.assert(
      fc.property(some, (drawn) => {
        const sheets = drawn.map(([n, count, of]) => sheet(n, count, of));
        const picked = pickEarlier(sheets);
        expect(pickEarlier([...sheets].reverse())).toEqual(picked);
        const { cells, orders } = countEarlier(picked);
        expect(picked.length).toBeLessThanOrEqual(mostEarlier.sheets);
        expect(cells).toBeLessThanOrEqual(mostEarlier.cells);
        expect(orders).toBeLessThanOrEqual(mostEarlier.orders);
        const left = sheets.filter((one) => !picked.includes(one));
        for (const one of left) {
          const fits =
            one.of === 'order'
              ? orders < mostEarlier.orders
              : cells + (one.cuts[0]?.count ?? 0) <= mostEarlier.cells;
          expect(fits && picked.length < mostEarlier.sheets).toBe(false);
        }
      }),
    );
  });
});
