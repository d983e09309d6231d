import { describe, expect, it } from 'vitest';
import type { PieceRead } from '../../../core/compare/pieces.ts';
import { differsOf, emptyDraft, sidesOf, wishOf } from './sides.ts';

const piece = (card: string, air?: string): PieceRead => ({
  studyId: 's1',
  card,
  ...(air === undefined ? {} : { air }),
  cells: 12,
  out: 6,
});

describe('laying pieces on sides', () => {
  it('lays two of two at once, and of three none', () => {
    expect(sidesOf([piece('AAAA'), piece('BBBB')], emptyDraft)).toEqual(['one', 'other']);
    const three = [piece('AAAA'), piece('BBBB'), piece('CCCC')];
    expect(sidesOf(three, emptyDraft)).toEqual(['none', 'none', 'none']);
    expect(wishOf(three, emptyDraft)).toBeUndefined();
    const laid = { 's1/CCCC/': 'one', 's1/AAAA/': 'other', 's1/BBBB/': 'other' } as const;
    const wish = wishOf(three, { ...emptyDraft, laid });
    expect(wish?.one.map(({ card }) => card)).toEqual(['CCCC']);
    expect(wish?.other.map(({ card }) => card)).toEqual(['AAAA', 'BBBB']);
  });

  it('takes the air for what differs where a card was cut with two, unless somebody says else', () => {
    const airs = [piece('AAAA', 'off'), piece('AAAA', '138 kPa')];
    expect(differsOf(airs, emptyDraft)).toBe('air');
    expect(differsOf(airs, { ...emptyDraft, differs: 'lens' })).toBe('lens');
    expect(differsOf([piece('AAAA')], emptyDraft)).toBe('other');
  });

  it('never takes two batches for one sheet', () => {
    const two = [piece('AAAA'), piece('BBBB')];
    expect(wishOf(two, { ...emptyDraft, oneSheet: true })?.oneSheet).toBe(true);
    expect(wishOf(two, { ...emptyDraft, oneSheet: true, differs: 'batch' })?.oneSheet).toBe(false);
  });
});
