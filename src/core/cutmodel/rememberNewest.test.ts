import { describe, expect, it } from 'vitest';
import { rememberNewest } from './rememberNewest.ts';

describe('what was worked out', () => {
  it('is worked out once for a question, and again when more than two dozen others were asked since', () => {
    const asked: number[] = [];
    const double = rememberNewest(({ n }: { readonly n: number }) => {
      asked.push(n);
      return { twice: 2 * n };
    });
    expect(double({ n: 3 })).toEqual({ twice: 6 });
    expect(double({ n: 3 })).toEqual({ twice: 6 });
    expect(asked).toEqual([3]);
    for (let n = 100; n < 164; n += 1) double({ n });
    double({ n: 3 });
    expect(asked.filter((n) => n === 3)).toHaveLength(2);
  });
});
