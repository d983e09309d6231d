import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { photoScore } from './photoScore.ts';

const grade = fc.constantFrom('out' as const, 'hangs' as const, 'stays' as const);
const seen = fc.record({
  cell: fc.constantFrom('A1', 'A2', 'B1'),
  grade: fc.oneof(grade, fc.constant('cant-tell' as const)),
  sure: fc.double({ min: 0, max: 1, noNaN: true }),
});

describe('how well photographs were read', () => {
  it('counts what was right, wrong, wrong and sure, and not told', () => {
    const truth = new Map([
      ['A1', 'out'],
      ['A2', 'hangs'],
      ['B1', 'stays'],
      ['B2', 'stays'],
    ] as const);
    const cells = [
      { cell: 'A1', grade: 'out', sure: 0.99 },
      { cell: 'A2', grade: 'stays', sure: 0.95 },
      { cell: 'B1', grade: 'out', sure: 0.7 },
      { cell: 'B2', grade: 'cant-tell', sure: 0.4 },
    ] as const;
    expect(
      photoScore([
        { name: 'one', found: true, cells, truth },
        { name: 'two', found: false, cells: [], truth },
      ]),
    ).toEqual({
      ...{
        cards: 2,
        found: 1,
        shapes: 4,
        cantTell: 1,
        right: 1,
        wrong: 2,
        wrongAndSure: 1,
        holesRight: 2,
      },
      lost: ['two'],
      mistakes: ['one A2: hangs, read stays (0.95)', 'one B1: stays, read out (0.70)'],
    });
  });

  it('loses no shape that somebody judged', () => {
    fc.assert(
      fc.property(
        fc.array(seen),
        fc.dictionary(fc.constantFrom('A1', 'A2', 'B1'), grade),
        (cells, truth) => {
          const score = photoScore([
            { name: 'x', found: true, cells, truth: new Map(Object.entries(truth)) },
          ]);
          expect(score.right + score.wrong + score.cantTell).toBe(score.shapes);
          expect(score.shapes).toBe(cells.filter(({ cell }) => cell in truth).length);
          expect(score.wrongAndSure).toBeLessThanOrEqual(score.wrong);
          expect(score.holesRight).toBeGreaterThanOrEqual(score.right);
        },
      ),
    );
  });
});
