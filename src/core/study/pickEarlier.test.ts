import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { EarlierSheet } from './earlierSheet.ts';
import { countEarlier } from './historyOf.ts';
import { mostInModel, mostOlder, pickEarlier, splitEarlier } from './pickEarlier.ts';

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

/** The sheets that stand in the model, of any number in any order. */
const inModel = (sheets: readonly EarlierSheet[]) => splitEarlier(pickEarlier(sheets)).inModel;

describe('the sheets that an answer leans on', () => {
  it('stand in the model where they were last read, and no more than six', () => {
    const sheets = [3, 1, 9, 4, 7, 2, 8, 5].map((n) => sheet(n));
    expect(names(inModel(sheets))).toEqual([9, 8, 7, 5, 4, 3].map(day));
  });

  it('leave room for cards beside the newest orders', () => {
    const orders = [20, 21, 22, 23].map((n) => sheet(n, 200, 'order'));
    const cards = [1, 2, 3, 4, 5].map((n) => sheet(n));
    expect(names(inModel([...orders, ...cards]))).toEqual([23, 22, 5, 4, 3, 2].map(day));
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
    expect(names(inModel(sheets))).toEqual([8, 6].map(day));
  });

  it('are, beyond those in the model, the newest others, as many as can be learnt from at once', () => {
    const sheets = Array.from({ length: 40 }, (_, n) => sheet(n));
    const picked = pickEarlier(sheets);
    expect(names(picked)).toEqual(Array.from({ length: 30 }, (_, k) => day(39 - k)));
    expect(splitEarlier(picked).older).toHaveLength(mostOlder.sheets);
  });

  it('are the same in whatever order they are found, within the bounds, and as many as fit', () => {
    const some = fc.uniqueArray(
      fc.tuple(fc.nat(400), fc.integer({ min: 1, max: 120 }), fc.constantFrom('cards', 'order')),
      { selector: ([n]) => n, maxLength: 45 },
    );
    fc.assert(
      fc.property(some, (drawn) => {
        const sheets = drawn.map(([n, count, of]) => sheet(n, count, of));
        const picked = pickEarlier(sheets);
        expect(pickEarlier([...sheets].reverse())).toEqual(picked);
        expect(pickEarlier(picked)).toEqual(picked);
        const split = splitEarlier(picked);
        const { cells, orders } = countEarlier(split.inModel);
        expect(split.inModel.length).toBeLessThanOrEqual(mostInModel.sheets);
        expect(cells).toBeLessThanOrEqual(mostInModel.cells);
        expect(orders).toBeLessThanOrEqual(mostInModel.orders);
        expect(split.older.length).toBeLessThanOrEqual(mostOlder.sheets);
        expect(countEarlier(split.older).cells).toBeLessThanOrEqual(mostOlder.cells);
        // None of the older would have found a place in the model.
        for (const one of split.older) {
          const fits =
            one.of === 'order'
              ? orders < mostInModel.orders
              : cells + (one.cuts[0]?.count ?? 0) <= mostInModel.cells;
          expect(fits && split.inModel.length < mostInModel.sheets).toBe(false);
        }
      }),
    );
  });
});
