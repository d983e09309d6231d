import { describe, expect, it } from 'vitest';
import { sampleCard, sampleEvent, sampleStudy } from '../../../test/samples/studies.ts';
import type { Card } from '../card/card.ts';
import type { Study } from '../study/study.ts';
import { conditionsOf, piecesIn, type ComparisonWish, type Piece } from './pieces.ts';
import { sheetOf } from './twoConditions.ts';

const withCards = (id: string, cards: readonly Card[], over: Partial<Study> = {}): Study =>
  sampleStudy(id, {
    cards,
    events: cards.flatMap(({ code }) =>
      ['A1', 'A2', 'B1'].map((cell) =>
        sampleEvent(`${id}${code}${cell}`, {
          cardCode: code,
          cell,
          grade: cell.startsWith('A') ? 'out' : 'stays',
        }),
      ),
    ),
    ...over,
  });

const wish = (
  one: readonly Piece[],
  other: readonly Piece[],
  over: Partial<ComparisonWish> = {},
) => ({
  differs: 'lens' as const,
  one,
  other,
  worthPct: 2,
  tellPct: 5,
  ...over,
});

const twoAirs = sampleCard('AIR2', {
  rungs: [
    { letter: 'A', setting: { powerPct: 34, speedMmPerS: 14, passes: 1, air: 'off' } },
    { letter: 'B', setting: { powerPct: 34, speedMmPerS: 14, passes: 1, air: { kPa: 138 } } },
  ],
});

describe('the pieces of a study', () => {
  it('are its read cards, one that was cut with several airs in parts', () => {
    const study = withCards('s1', [sampleCard('ONE1', { sheet: 'A-1' }), twoAirs]);
    expect(piecesIn({ ...study, cards: [...study.cards, sampleCard('NEW1')] })).toEqual([
      { studyId: 's1', card: 'ONE1', cells: 3, out: 2, sheet: 'A-1' },
      { studyId: 's1', card: 'AIR2', air: 'off', cells: 2, out: 2 },
      { studyId: 's1', card: 'AIR2', air: '138 kPa', cells: 1, out: 0 },
    ]);
  });

  it('make two sides, each cell with its thickness', () => {
    const study = withCards('s1', [twoAirs]);
    const piece = { studyId: 's1', card: 'AIR2' };
    const made = conditionsOf(
      [study],
      wish([{ ...piece, air: 'off' }], [{ ...piece, air: '138 kPa' }]),
    );
    if (!made.ok) throw new Error(made.problem.code);
    const { one, other, otherMachine } = made.value;
    expect([one.length, other.length, otherMachine]).toEqual([2, 1, undefined]);
    expect(one[0]?.thicknessMm).toBeCloseTo(3.15, 9);
    expect(sheetOf(one[0] ?? other[0] ?? { powerPct: 0, speedMmPerS: 1, passes: 1 })).toBe(
      sheetOf(other[0] ?? { powerPct: 0, speedMmPerS: 1, passes: 1 }),
    );
  });

  it('of two studies never share a sheet unless batch and sheet are named alike, or somebody says so', () => {
    const sheets = (name: Partial<Card>, over: Partial<ComparisonWish> = {}): number => {
      const studies = ['s1', 's2'].map((id) => withCards(id, [sampleCard('ONE1', name)]));
      const made = conditionsOf(
        studies,
        wish([{ studyId: 's1', card: 'ONE1' }], [{ studyId: 's2', card: 'ONE1' }], over),
      );
      if (!made.ok) throw new Error(made.problem.code);
      return new Set([...made.value.one, ...made.value.other].map(sheetOf)).size;
    };
    expect(sheets({ sheet: '1' })).toBe(2);
    expect(sheets({ sheet: '1', batch: 'May' })).toBe(1);
    expect(sheets({}, { oneSheet: true })).toBe(1);
  });

  it('bring the other machine along where it has another name', () => {
    const first = withCards('s1', [sampleCard('ONE1')]);
    const second = withCards('s2', [sampleCard('ONE1')], {
      machine: { ...first.machine, name: 'the big one' },
    });
    const made = conditionsOf(
      [first, second],
      wish([{ studyId: 's1', card: 'ONE1' }], [{ studyId: 's2', card: 'ONE1' }]),
    );
    expect(made.ok && made.value.otherMachine?.name).toBe('the big one');
  });

  it('are refused on both sides at once, and of two materials', () => {
    const code = (made: ReturnType<typeof conditionsOf>) => (made.ok ? '' : made.problem.code);
    const first = withCards('s1', [sampleCard('ONE1')]);
    const piece = { studyId: 's1', card: 'ONE1' };
    expect(code(conditionsOf([first], wish([piece], [piece])))).toBe('compare-piece-on-both-sides');
    expect(code(conditionsOf([first], wish([piece], [])))).toBe('compare-side-unread');
    const acrylic = withCards('s2', [sampleCard('TWO2')], {
      stock: { material: 'acrylic', nominalThicknessMm: 3, thicknessReadingsMm: [3] },
    });
    expect(
      code(conditionsOf([first, acrylic], wish([piece], [{ studyId: 's2', card: 'TWO2' }]))),
    ).toBe('compare-two-materials');
  });
});
