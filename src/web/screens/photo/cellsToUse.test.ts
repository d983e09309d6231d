import { describe, expect, it } from 'vitest';
import { cellsToUse, corrected, gradesToSay, needsLook, type Corrections } from './cellsToUse.ts';

const seen = [
  { cell: 'A1', grade: 'out', sure: 0.99 },
  { cell: 'A2', grade: 'hangs', sure: 0.7 },
  { cell: 'B1', grade: 'cant-tell', sure: 0.5 },
] as const;
const none: Corrections = new Map();

/** What stands after so many taps on a shape. */
const tapped = (cell: string, taps: number) => {
  let corrections = none;
  for (let i = 0; i < taps; i += 1)
    corrections = corrected(cellsToUse(seen, corrections), corrections, cell);
  return cellsToUse(seen, corrections);
};
const gradeOf = (cell: string, taps: number) =>
  tapped(cell, taps).find((one) => one.cell === cell)?.grade;

describe('what a photograph says, looked over', () => {
  it('says nothing of a shape that it cannot tell, and asks to look at that and at what is less sure', () => {
    const cells = cellsToUse(seen, none);
    expect(cells.filter(needsLook).map(({ cell }) => cell)).toEqual(['A2', 'B1']);
    expect(gradesToSay(cells)).toEqual([
      { cell: 'A1', grade: 'out', source: 'photo' },
      { cell: 'A2', grade: 'hangs', source: 'photo' },
    ]);
  });

  it('steps on by taps as a card in the hand does, and a shape that nobody can tell from out', () => {
    expect([0, 1, 2, 3].map((taps) => gradeOf('A1', taps))).toEqual([
      'out',
      'hangs',
      'stays',
      'out',
    ]);
    expect([0, 1, 2].map((taps) => gradeOf('B1', taps))).toEqual([undefined, 'out', 'hangs']);
  });

  it('keeps a correction as one, and no longer where it is tapped back', () => {
    expect(gradesToSay(tapped('A1', 1))).toContainEqual({
      cell: 'A1',
      grade: 'hangs',
      source: 'photo-corrected',
    });
    expect(gradesToSay(tapped('B1', 1))).toContainEqual({
      cell: 'B1',
      grade: 'out',
      source: 'photo-corrected',
    });
    expect(gradesToSay(tapped('A1', 3))).toEqual(gradesToSay(cellsToUse(seen, none)));
    expect(
      tapped('A2', 1)
        .filter(needsLook)
        .map(({ cell }) => cell),
    ).toEqual(['B1']);
  });
});
