import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aCard, aStudy } from '../../../test/builders.ts';
import type { ReadingEvent } from '../reading/readingEvent.ts';
import { earlierSheetsOf } from './earlierSheet.ts';
import { countEarlier, historyOf } from './historyOf.ts';
import { toCutStudy } from './toCutStudy.ts';

const at = (day: number) => `2025-03-0${String(day)}T10:00:00.000Z`;
const graded = (cardCode: string, cell: string, day = 1, grade = 'out' as const): ReadingEvent => ({
  id: `${cardCode}-${cell}-${String(day)}`,
  cardCode,
  at: at(day),
  kind: 'graded',
  cell,
  grade,
});

const study = aStudy({
  id: 's7',
  stock: { material: 'plywood', nominalThicknessMm: 3, thicknessReadingsMm: [3.1, 3.3] },
  cards: [
    aCard({ code: 'AAAA', batch: 'spring', sheet: 'no. 4', thicknessMm: 3.15 }),
    aCard({ code: 'BBBB', batch: 'spring', sheet: 'no. 4' }),
    aCard({ code: 'CCCC' }),
  ],
  events: [
    graded('AAAA', 'A1', 1),
    graded('AAAA', 'A2', 2),
    graded('BBBB', 'A1', 4),
    { id: 'clip', cardCode: 'CCCC', at: at(3), kind: 'spoilt', cell: 'B1', reason: 'clip' },
    { id: 'knot', cardCode: 'CCCC', at: at(3), kind: 'spoilt', cell: 'B2', reason: 'knot' },
  ],
  tallies: [
    {
      id: 't1',
      at: at(5),
      setting: { powerPct: 30, speedMmPerS: 12, passes: 1 },
      out: 197,
      hangs: 2,
      stays: 0,
      spoilt: 1,
      partLengthMm: 160,
      batch: 'spring',
    },
  ],
});

describe('what a study knows of its sheets', () => {
  const sheets = earlierSheetsOf(study);

  it('puts the cells of one board together, and takes its newest reading', () => {
    expect(
      sheets.map(({ of, batch, sheet, lastReadAt }) => [of, batch, sheet, lastReadAt]),
    ).toEqual([
      ['cards', 's7/spring', 'no. 4', at(4)],
      ['cards', 's7/', 'card CCCC', at(3)],
      ['order', 's7/spring', 'order t1', at(5)],
    ]);
  });

  it('counts what was cut alike and ended alike once, with the thickness that it was cut in', () => {
    const cell = { powerPct: 30, speedMmPerS: 12, passes: 1, shapeLengthMm: 62, grade: 'out' };
    expect(sheets[0]?.cuts).toEqual([
      { cell: { ...cell, thicknessMm: 3.15 }, count: 2 },
      { cell: { ...cell, thicknessMm: 3.2 }, count: 1 },
    ]);
  });

  it('keeps why a cell was spoilt, and counts only what says something', () => {
    expect(sheets[1]?.cuts.map(({ cell: { spoilt } }) => spoilt)).toEqual(['clip', 'knot']);
    expect(countEarlier(sheets)).toEqual({ cells: 4, sheets: 2, parts: 200, orders: 1 });
  });

  it('takes an order part by part, its lost parts as flaws', () => {
    const order = sheets.slice(2);
    expect(order[0]?.cuts.map(({ cell, count }) => [cell.grade ?? cell.spoilt, count])).toEqual([
      ['out', 197],
      ['hangs', 2],
      ['glue-pocket', 1],
    ]);
    const cells = historyOf(order);
    expect(cells.map(({ count }) => count)).toEqual([197, 2, 1]);
    expect(cells[0]).toEqual({
      powerPct: 30,
      speedMmPerS: 12,
      passes: 1,
      thicknessMm: 3.2,
      shapeLengthMm: 160,
      grade: 'out',
      batch: 's7/spring',
      sheet: 'order t1',
      count: 197,
      counted: true,
    });
  });

  it('knows nothing of a study that nobody read', () => {
    expect(earlierSheetsOf(aStudy({ cards: [aCard()] }))).toEqual([]);
  });

  it('loses no read cell and invents none', () => {
    const cell = fc.constantFrom('A1', 'A2', 'B1', 'B2', 'C1', 'C2');
    const grade = fc.constantFrom('out', 'hangs', 'stays');
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, grade), { maxLength: 30 }), (said) => {
        const events = said.map(([id, end], i): ReadingEvent => ({
          id: String(i),
          cardCode: 'K7QX',
          at: at(1),
          kind: 'graded',
          cell: id,
          grade: end,
        }));
        const read = aStudy({ cards: [aCard()], events });
        const plain = toCutStudy(read).cells.map(({ speedMmPerS, grade: end }) => [
          speedMmPerS,
          end,
        ]);
        const kept = historyOf(earlierSheetsOf(read)).flatMap(
          ({ speedMmPerS, grade: end, count = 1 }) =>
            Array.from({ length: count }, () => [speedMmPerS, end]),
        );
        expect(kept.map(String).sort()).toEqual(plain.map(String).sort());
      }),
    );
  });
});
