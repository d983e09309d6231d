import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { slipsOf } from './typingSlips.ts';

describe('a figure typed wrong', () => {
  it('loses a digit, swaps two, loses its point, or was left as it stood', () => {
    expect(slipsOf(14.5, [16])).toEqual([
      { kind: 'not-changed', value: 16 },
      { kind: 'digit-dropped', value: 4.5 },
      { kind: 'digit-dropped', value: 1.5 },
      { kind: 'digit-dropped', value: 14 },
      { kind: 'digits-swapped', value: 41.5 },
      { kind: 'point-lost', value: 145 },
    ]);
    expect(slipsOf(8, [])).toEqual([{ kind: 'point-lost', value: 80 }]);
  });

  it('is never the figure itself, never 0 or below, and never said twice', () => {
    const figure = fc.integer({ min: 1, max: 2000 }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(figure, fc.array(figure, { maxLength: 2 }), (value, before) => {
        const values = slipsOf(value, before).map((slip) => slip.value);
        expect(values).not.toContain(value);
        expect(values.every((each) => each > 0)).toBe(true);
        expect(new Set(values).size).toBe(values.length);
      }),
    );
  });
});
