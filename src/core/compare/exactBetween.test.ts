import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { StudyCell } from '../cutmodel/cutStudy.ts';
import type { Grade } from '../reading/grade.ts';
import { exactBetween } from './exactBetween.ts';

const cell = (speedMmPerS: number, grade: Grade): StudyCell => ({
  powerPct: 30,
  speedMmPerS,
  passes: 1,
  grade,
});

/** Pairs at many settings: so many of which only one side's came out, so many only the other's, so many alike. */
const pairsOf = (onlyOne: number, onlyOther: number, bothOut: number, neither: number) => {
  const ends: readonly (readonly [Grade, Grade])[] = [
    ...Array.from({ length: onlyOne }, () => ['out', 'stays'] as const),
    ...Array.from({ length: onlyOther }, () => ['hangs', 'out'] as const),
    ...Array.from({ length: bothOut }, () => ['out', 'out'] as const),
    ...Array.from({ length: neither }, () => ['stays', 'hangs'] as const),
  ];
  return {
    one: ends.map(([a], i) => cell(10 + i, a)),
    other: ends.map(([, b], i) => cell(10 + i, b)),
  };
};

describe('the exact test between two conditions', () => {
  // Fagerland, Lydersen & Laake (2013) BMC Med Res Methodol 13:91: the tables of Bentur et al. (2009; 1 and 7 of 21 pairs) and
  // Cavo et al. (2012; 6 and 16 of 161). Counts as printed there, values of the exact conditional test from memory.
  it.each([
    [pairsOf(1, 7, 1, 12), 21, 0.0703],
    [pairsOf(6, 16, 59, 80), 161, 0.0525],
  ])('is McNemar’s exact one as published', (sides, pairs, p) => {
    const exact = exactBetween(sides);
    expect(exact).toMatchObject({ kind: 'paired', pairs, unpaired: 0 });
    expect(exact.kind === 'paired' ? exact.p : NaN).toBeCloseTo(p, 4);
  });

  it('is Fisher’s exact one at a single setting', () => {
    // Fisher (1935), the lady tasting tea: 3 of 4 against 1 of 4 gives 17/35 two-sided.
    const exact = exactBetween({
      one: [cell(15, 'out'), cell(15, 'out'), cell(15, 'out'), cell(15, 'stays')],
      other: [cell(15, 'out'), cell(15, 'hangs'), cell(15, 'stays'), cell(15, 'stays')],
    });
    expect(exact).toMatchObject({ kind: 'unpaired', table: { a: 3, b: 1, c: 1, d: 3 } });
    expect(exact.kind === 'unpaired' ? exact.p : NaN).toBeCloseTo(17 / 35, 12);
  });

  it('pairs only what was cut alike, and says what is left over', () => {
    const exact = exactBetween({
      one: [cell(10, 'out'), cell(12, 'out'), cell(12, 'out'), cell(20, 'stays')],
      other: [cell(10, 'stays'), cell(12, 'stays'), cell(25, 'stays')],
    });
    expect(exact).toEqual({
      kind: 'paired',
      pairs: 2,
      onlyOneOut: 2,
      onlyOtherOut: 0,
      unpaired: 3,
      p: 0.5,
    });
  });

  it('says so where nothing was cut alike, or where all pairs ended alike', () => {
    expect(exactBetween({ one: [cell(10, 'out')], other: [cell(11, 'out')] }).kind).toBe(
      'no-setting-in-common',
    );
    expect(exactBetween(pairsOf(0, 0, 3, 3))).toEqual({ kind: 'no-difference-seen', pairs: 6 });
  });

  it('leaves spoilt cells out', () => {
    const spoilt: StudyCell = { ...cell(12, 'stays'), spoilt: 'clip' };
    expect(
      exactBetween({
        one: [cell(10, 'out'), cell(12, 'out'), spoilt],
        other: [cell(10, 'out'), cell(12, 'stays')],
      }),
    ).toMatchObject({ pairs: 2, unpaired: 0 });
  });

  it('does not care which side is which', () => {
    const count = fc.integer({ min: 0, max: 12 });
    fc.assert(
      fc.property(count, count, count, (b, c, alike) => {
        fc.pre(b + c > 0);
        const { one, other } = pairsOf(b, c, alike, 1);
        const [there, back] = [
          exactBetween({ one, other }),
          exactBetween({ one: other, other: one }),
        ];
        if (there.kind !== 'paired' || back.kind !== 'paired') throw new Error('not paired');
        expect(back.p).toBeCloseTo(there.p, 12);
        expect(back.onlyOneOut).toBe(there.onlyOtherOut);
      }),
    );
  });
});
