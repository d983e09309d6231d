import { describe, expect, it } from 'vitest';
import type { Comparison } from '../../core/compare/compareConditions.ts';
import { compareVerdictText as words, comparisonSaid } from './compareVerdict.ts';

const comparison: Comparison = {
  version: 1,
  differs: 'air',
  gainPct: { middle: 6.2, low: 1.1, high: 11.4 },
  chances: { gains: 0.92, loses: 0.001, neither: 0.079 },
  worthPct: 2,
  tellPct: 5,
  sheets: 'common',
  read: {
    one: { cells: 24, out: 11, air: 'off' },
    other: { cells: 24, out: 17, air: { kPa: 138 } },
  },
  exact: { kind: 'paired', pairs: 24, onlyOneOut: 1, onlyOtherOut: 7, unpaired: 0, p: 18 / 256 },
  settling: {
    settings: [{ powerPct: 30, speedMmPerS: 15, passes: 1 }],
    cellsASide: 70,
    moreASide: 50,
    onOwnSheets: null,
  },
  remarks: [],
  convergence: { points: 3000, effectivePoints: 1800 },
};
const plain = (text: string): string => text.replaceAll('\u202f', ' ');
const called = { one: 'less air', other: 'more air' };
const said = (over: Partial<Comparison>): string =>
  plain(words.sentence({ ...comparison, ...over }, called));

describe('a comparison in words', () => {
  it('is one sentence with its range and its chance', () => {
    expect(said({})).toBe(
      'With more air you may cut 6 % faster than with less air (between 1 and 11 %); 92 in 100 that it is more than 2 %.',
    );
  });

  it('turns round where the other is slower, and says both ways where the range holds both', () => {
    expect(
      said({
        gainPct: { middle: -6.2, low: -11.4, high: -1.1 },
        chances: { gains: 0, loses: 0.92, neither: 0.08 },
      }),
    ).toContain('you must cut 6 % slower than with less air (between 1 and 11 %); 92 in 100');
    expect(said({ gainPct: { middle: 3, low: -4, high: 9 } })).toContain(
      '3 % faster than with less air (between 4 % slower and 9 % faster)',
    );
  });

  it('says that nothing can be told yet, or that both cut alike', () => {
    expect(said({ gainPct: { middle: 0.2, low: -9, high: 10 } })).toBe(
      'No difference between less air and more air can be told yet: with more air it is between 9 % slower and 10 % faster.',
    );
    expect(
      said({
        gainPct: { middle: 0.4, low: -1, high: 1.6 },
        chances: { gains: 0.02, loses: 0.01, neither: 0.97 },
      }),
    ).toBe(
      'With more air you cut as fast as with less air: 97 in 100 that they differ by less than 2 %.',
    );
  });

  it('names the sides by what was noted, else by what is usual', () => {
    expect(words.names(comparison)).toEqual({ one: 'air off', other: 'air at 138\u202fkPa' });
    expect(words.names({ ...comparison, differs: 'lens' }).other).toBe('the other lens');
  });

  it('says the exact test in plain words', () => {
    const { exact, howMany } = comparisonSaid(comparison);
    expect(plain(exact)).toContain(
      'Of 24 pairs of shapes at one setting each, 8 ended differently: 7 came out only with air at 138 kPa, 1 only with air off.',
    );
    expect(plain(exact)).toContain('by chance 1 time in 14 (McNemar’s exact test, p = 0.07)');
    expect(plain(howMany)).toContain('50 more shapes a side on one sheet would tell');
  });
});
