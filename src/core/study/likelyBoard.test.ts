import { describe, expect, it } from 'vitest';
import { aCard, aStudy } from '../../../test/builders.ts';
import { likelyBoard } from './likelyBoard.ts';
import { sheetsCut } from './sheetsCut.ts';

describe('the board that the next card is likely cut from', () => {
  const { stock } = aStudy();

  it('is that of the card before, so that the two are one board', () => {
    const cards = [aCard({ code: 'AAAA' }), aCard({ code: 'BBBB' })];
    expect(likelyBoard({ cards, stock })).toEqual({ sheet: 'card BBBB' });
    const third = aCard({ code: 'CCCC', ...likelyBoard({ cards, stock }) });
    expect(sheetsCut({ cards: [...cards, third] })[0]?.cards).toEqual(['BBBB', 'CCCC']);
  });

  it('is the one that the stock names, whatever was cut before', () => {
    const named = { ...stock, batch: 'spring', sheet: 'no. 4' };
    expect(likelyBoard({ cards: [aCard({ code: 'AAAA' })], stock: named })).toEqual({
      batch: 'spring',
      sheet: 'no. 4',
    });
  });

  it('is nobody knows which, before a first card and after another delivery', () => {
    expect(likelyBoard({ cards: [], stock })).toEqual({});
    const cards = [aCard({ code: 'AAAA', batch: 'winter' })];
    expect(likelyBoard({ cards, stock: { ...stock, batch: 'spring' } })).toEqual({
      batch: 'spring',
    });
  });
});
