import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import type { CellLooks } from './cellLooks.ts';
import { gradeCell, leastSure, type BackLooks } from './gradeCell.ts';

const inPlace: CellLooks = {
  cell: 'A1',
  sheet: 1,
  under: 0,
  neither: 0,
  shade: 0,
  odd: 0.01,
  contrast: 20,
};
const hole: CellLooks = { ...inPlace, sheet: 0.02, under: 0.9, neither: 0.08, shade: -1.2 };
const back = (of: CellLooks, lined: number, faintestLn = 0.06): BackLooks => ({
  ...of,
  lined,
  faintestLn,
});

const share = fc.double({ min: 0, max: 1, noNaN: true });
const anyLooks: fc.Arbitrary<CellLooks> = fc.record({
  cell: fc.constant('A1'),
  sheet: share,
  under: share,
  neither: share,
  shade: fc.double({ min: -4, max: 4, noNaN: true }),
  odd: fc.double({ min: 0, max: 3, noNaN: true }),
  contrast: fc.double({ min: 0, max: 60, noNaN: true }),
});
const anyBack: fc.Arbitrary<BackLooks> = fc
  .tuple(anyLooks, share, fc.double({ min: 0.05, max: 3, noNaN: true }))
  .map(([looks, lined, faintestLn]) => back(looks, lined, faintestLn));

describe('the grade of one shape', () => {
  it('is none where nothing tells the card from what lies under it, whatever it looks like', () => {
    for (const looks of [hole, inPlace])
      expect(gradeCell({ ...looks, contrast: 0.3 })).toMatchObject({ grade: 'cant-tell' });
  });

  it('is out, hanging or not through where both sides show it', () => {
    expect(gradeCell(hole, back(hole, 0))).toMatchObject({ grade: 'out' });
    expect(gradeCell(inPlace, back(inPlace, 0.95))).toMatchObject({ grade: 'hangs' });
    expect(gradeCell(inPlace, back(inPlace, 0.05))).toMatchObject({ grade: 'stays' });
    for (const [of, lined] of [
      [hole, 0],
      [inPlace, 0.95],
      [inPlace, 0.05],
    ] as const)
      expect(gradeCell(of, back(of, lined)).sure).toBeGreaterThan(0.95);
  });

  it('is hardly sure from the front alone that what is in place is not through', () => {
    const { grade, sure } = gradeCell(inPlace);
    expect(grade).toBe('stays');
    expect(sure).toBeLessThan(0.9);
    expect(gradeCell({ ...inPlace, shade: 0.35 })).toMatchObject({ grade: 'hangs' });
  });

  it('is not told where the sides disagree, a hand lies there, or no line could be seen', () => {
    expect(gradeCell(hole, back(inPlace, 0))).toMatchObject({ grade: 'cant-tell' });
    expect(gradeCell({ ...hole, odd: 2 })).toMatchObject({ grade: 'cant-tell' });
    expect(gradeCell({ ...inPlace, contrast: 1 })).toMatchObject({ grade: 'cant-tell' });
    expect(gradeCell({ ...hole, contrast: 1 })).toMatchObject({ grade: 'out' });
    expect(gradeCell(inPlace, back(inPlace, 0, 2)).sure).toBeLessThan(0.6);
  });

  it('has always a share, and is told only where it is likely enough', () => {
    fc.assert(
      fc.property(anyLooks, fc.option(anyBack, { nil: undefined }), (front, behind) => {
        const { grade, sure } = gradeCell(front, behind);
        expect(sure).toBeGreaterThanOrEqual(0);
        expect(sure).toBeLessThanOrEqual(1);
        expect(grade === 'cant-tell').toBe(sure < leastSure);
      }),
    );
  });

  it('never turns from in place to out as more of the sheet is seen', () => {
    fc.assert(
      fc.property(anyLooks, share, (looks, other) => {
        const [less, more] = [Math.min(looks.sheet, other), Math.max(looks.sheet, other)];
        const clean = { ...looks, odd: 0, under: 0.5 };
        const few = gradeCell({ ...clean, sheet: less });
        const many = gradeCell({ ...clean, sheet: more });
        if (many.grade === 'out') expect(few).toMatchObject({ grade: 'out' });
      }),
    );
  });
});
