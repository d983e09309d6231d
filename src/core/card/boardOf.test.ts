import { describe, expect, it } from 'vitest';
import { aCard } from '../../../test/builders.ts';
import { boardOf, boardOfCard } from './boardOf.ts';
import { sheetOfCard } from './sheetOfCard.ts';

describe('the board that something is cut from', () => {
  it('is what names it and no more; nothing where nothing does', () => {
    expect(boardOf({})).toEqual({});
    expect(boardOf(aCard({ batch: 'spring' }))).toEqual({ batch: 'spring' });
    expect(boardOf({ batch: 'spring', sheet: 'no. 4' })).toEqual({
      batch: 'spring',
      sheet: 'no. 4',
    });
  });

  it('makes a card that is said to be of it one of the same sheet', () => {
    for (const first of [aCard({ code: 'AAAA' }), aCard({ code: 'AAAA', sheet: 'no. 4' })]) {
      const second = aCard({ code: 'BBBB', ...boardOfCard(first) });
      expect(sheetOfCard(second)).toBe(sheetOfCard(first));
      expect(boardOfCard(second)).toEqual(boardOfCard(first));
    }
  });
});
