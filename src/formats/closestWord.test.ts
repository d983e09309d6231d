import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closestWord, editDistance } from './closestWord.ts';

describe('the edit distance', () => {
  it('of kitten and sitting is 3', () => {
    // The usual textbook example; common practice, no source.
    expect(editDistance('kitten', 'sitting')).toBe(3);
  });

  it('is a distance', () => {
    const word = fc.string({ maxLength: 8 });
    fc.assert(
      fc.property(word, word, word, (a, b, c) => {
        expect(editDistance(a, a)).toBe(0);
        expect(editDistance(a, b)).toBe(editDistance(b, a));
        expect(editDistance(a, c)).toBeLessThanOrEqual(editDistance(a, b) + editDistance(b, c));
      }),
    );
  });
});

describe('the word that was meant', () => {
  const known = ['powerPct', 'speedMmPerS', 'out', 'hangs'];
  it.each([
    ['PowerPCT', 'powerPct'],
    ['speed', 'speedMmPerS'],
    ['powrPct', 'powerPct'],
    ['hang', 'hangs'],
    ['o', undefined],
    ['banana', undefined],
  ])('for %s is %s', (typed, meant) => {
    expect(closestWord(typed, known)).toBe(meant);
  });
});
