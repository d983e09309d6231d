import { describe, expect, it } from 'vitest';

import { compare, plain, type Tolerance } from './compare.ts';

const passes = (got: unknown, expected: unknown, tolerance: Tolerance): boolean =>
  compare(got, expected, tolerance).mismatches.length === 0;

describe('compare', () => {
  it('allows a number its absolute or its relative share, whichever is larger, and no more', () => {
    expect(passes({ a: 10.09 }, { a: 10 }, 0.1)).toBe(true);
    expect(passes({ a: 10.11 }, { a: 10 }, 0.1)).toBe(false);
    expect(passes({ a: 100.9 }, { a: 100 }, { absolute: 0.1, relative: 0.01 })).toBe(true);
    expect(passes({ a: 101.1 }, { a: 100 }, { absolute: 0.1, relative: 0.01 })).toBe(false);
    expect(passes({ a: NaN }, { a: 100 }, { relative: 10 })).toBe(false);
  });

  it('takes an allowance for each key where the file gives one, and none for the others', () => {
    const tolerance = { absolute: { a: 0.1, b: 1 }, importanceSampling: { draws: 5 } };
    expect(passes({ a: { mean: 1.05 }, b: [3] }, { a: { mean: 1 }, b: [2.5] }, tolerance)).toBe(
      true,
    );
    expect(passes({ a: { mean: 1.2 } }, { a: { mean: 1 } }, tolerance)).toBe(false);
    expect(passes({ c: 1.0001 }, { c: 1 }, tolerance)).toBe(false);
  });

  it('knows of which keys a named allowance speaks', () => {
    const tolerance = { coefAbs: 0.1, seRel: 0.5 };
    expect(passes({ slope: 2.05, se: [1.4] }, { slope: 2, se: [1] }, tolerance)).toBe(true);
    expect(passes({ slope: 2.2 }, { slope: 2 }, tolerance)).toBe(false);
    expect(passes({ se: [1.6] }, { se: [1] }, tolerance)).toBe(false);
    expect(passes({ residualDf: 5 }, { residualDf: 4 }, tolerance)).toBe(false);
  });

  it('compares what both have, counts it, and lets information pass', () => {
    expect(compare({ a: 1, extra: 9 }, { a: 1, b: 2 }, 0).compared).toBe(1);
    expect(compare({ z: 1 }, { a: 1 }, 0).compared).toBe(0);
    expect(passes({ a: 1, printed: 3 }, { a: 1, printed: 2 }, 0)).toBe(true);
    expect(passes({ why: 'mine' }, { why: 'theirs' }, 0)).toBe(true);
  });

  it('takes a printed number as good to half a unit of its last digit, as the longest was printed', () => {
    const printed = { a: 50.25756234, b: 50 };
    expect(passes({ a: 50.257562336, b: 50 }, printed, { absolute: 1e-9 })).toBe(true);
    expect(passes({ a: 50.25756233, b: 50 }, printed, { absolute: 1e-9 })).toBe(false);
    expect(passes({ a: 50.25756234, b: 50.0000001 }, printed, { absolute: 1e-9 })).toBe(false);
    expect(passes({ v: 0.30000000000009 }, { v: 0.3000000000000041 }, { relative: 1e-15 })).toBe(
      false,
    );
    expect(passes({ n: 60 }, { n: 59 }, 0)).toBe(false);
  });

  it('wants text, flags, nothing, and the length of a list exactly', () => {
    expect(passes({ ok: true, s: null }, { ok: true, s: null }, 1)).toBe(true);
    expect(passes({ ok: false }, { ok: true }, 1)).toBe(false);
    expect(passes({ s: 0 }, { s: null }, 1)).toBe(false);
    expect(passes({ l: [1, 2] }, { l: [1] }, 1)).toBe(false);
    expect(passes({ l: 'out' }, { l: 'hangs' }, 1)).toBe(false);
    expect(passes(plain({ v: Infinity }), { v: 'Infinity' }, 1)).toBe(true);
  });
});
