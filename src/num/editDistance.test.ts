import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editDistance } from './editDistance.ts';

describe('the edit distance', () => {
  it.each([
    // The usual textbook examples; common practice, no source.
    ['kitten', 'sitting', 3],
    ['ca', 'abc', 3],
    ['form', 'from', 1],
    ['', 'abc', 3],
  ])('of %s and %s is %i', (a, b, edits) => {
    expect(editDistance(a, b)).toBe(edits);
  });

  it('is nought for the same, the same both ways, and never more than the longer word', () => {
    const word = fc.string({ maxLength: 8 });
    fc.assert(
      fc.property(word, word, (a, b) => {
        const edits = editDistance(a, b);
        expect(editDistance(a, a)).toBe(0);
        expect(edits).toBe(editDistance(b, a));
        expect(edits).toBeLessThanOrEqual(Math.max(a.length, b.length));
        expect(edits).toBeGreaterThanOrEqual(Math.abs(a.length - b.length));
        if (a !== b) expect(edits).toBeGreaterThan(0);
      }),
    );
  });

  it('of a word and itself with one neighbour swap is at most 1', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[a-z]{2,10}$/), fc.nat(8), (word, at) => {
        const i = at % (word.length - 1);
        const swapped = word.slice(0, i) + word.charAt(i + 1) + word.charAt(i) + word.slice(i + 2);
        expect(editDistance(word, swapped)).toBeLessThanOrEqual(1);
      }),
    );
  });
});
