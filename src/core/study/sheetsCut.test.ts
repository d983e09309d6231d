import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aCard, aStudy } from '../../../test/builders.ts';
import { sheetsCut } from './sheetsCut.ts';
import { toCutStudy } from './toCutStudy.ts';

describe('the boards that cards were cut from', () => {
  it('are one a card unless something else was said, the last first', () => {
    const cards = [aCard({ code: 'AAAA' }), aCard({ code: 'BBBB', batch: 'spring' })];
    expect(sheetsCut({ cards })).toEqual([
      { sheet: 'card BBBB', batch: 'spring', cards: ['BBBB'], isNamed: false },
      { sheet: 'card AAAA', cards: ['AAAA'], isNamed: false },
    ]);
  });

  it('are shared by name, or by the card that was cut from them before', () => {
    const cards = [
      aCard({ code: 'AAAA' }),
      aCard({ code: 'BBBB', sheet: 'no. 4' }),
      aCard({ code: 'CCCC', sheet: 'card AAAA' }),
      aCard({ code: 'DDDD', sheet: 'no. 4' }),
    ];
    expect(sheetsCut({ cards }).map(({ cards: codes, isNamed }) => [codes, isNamed])).toEqual([
      [['BBBB', 'DDDD'], true],
      [['AAAA', 'CCCC'], false],
    ]);
  });

  it('are what the model takes for sheets', () => {
    const card = fc.record({
      batch: fc.constantFrom('spring', 'autumn'),
      sheet: fc.constantFrom('no. 4', 'card A0', undefined),
    });
    fc.assert(
      fc.property(fc.array(card, { minLength: 1, maxLength: 6 }), (given) => {
        const cards = given.map(({ batch, sheet }, i) =>
          aCard({ code: `A${String(i)}`, batch, ...(sheet === undefined ? {} : { sheet }) }),
        );
        const events = cards.map(({ code, cells }, i) => ({
          id: `e${String(i)}`,
          cardCode: code,
          at: '2031-05-06T07:08:09.000Z',
          kind: 'graded' as const,
          cell: cells[0]?.id ?? '',
          grade: 'out' as const,
        }));
        const { cells } = toCutStudy(aStudy({ cards, events }));
        const inModel = new Set(cells.map((cell) => `${cell.batch ?? ''}/${cell.sheet ?? ''}`));
        const found = sheetsCut({ cards });
        expect(new Set(found.map(({ batch, sheet }) => `${batch ?? ''}/${sheet}`))).toEqual(
          inModel,
        );
        expect(found.flatMap((one) => one.cards).sort()).toEqual(cards.map(({ code }) => code));
      }),
    );
  });
});
