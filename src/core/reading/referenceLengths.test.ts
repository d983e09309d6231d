import fc from 'fast-check';
import { expect, it } from 'vitest';
import { referenceLengthMm } from './promise.ts';
import { referenceLengthsIn } from './referenceLengths.ts';

// By ADR 0011: a part of 180 mm is three shapes of 60 mm, and one of 20 mm is one.
it.each([
  [referenceLengthMm, 1],
  [3 * referenceLengthMm, 3],
  [2.5 * referenceLengthMm, 2.5],
  [referenceLengthMm / 3, 1],
  [0, 1],
])('%d mm are %d of them', (lengthMm, lengths) => {
  expect(referenceLengthsIn(lengthMm)).toBeCloseTo(lengths, 12);
});

it('is never fewer for a longer part, and never fewer than one', () => {
  const mm = fc.double({ min: 0, max: 1e5, noNaN: true });
  fc.assert(
    fc.property(mm, mm, (one, more) => {
      expect(referenceLengthsIn(one + more)).toBeGreaterThanOrEqual(referenceLengthsIn(one));
      expect(referenceLengthsIn(one)).toBeGreaterThanOrEqual(1);
    }),
  );
});
