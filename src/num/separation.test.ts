import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { separationOf, type BinaryRow } from './separation.ts';

const along = (x: readonly number[], y: readonly (0 | 1)[]): readonly BinaryRow[] =>
  y.map((successes, i) => ({ x: [1, x[i] ?? NaN], trials: 1, successes }));

describe('separationOf', () => {
  it('tells the kinds apart along one covariate', () => {
    expect(separationOf(along([10, 11, 12, 13], [1, 1, 0, 0]))).toBe('complete');
    expect(separationOf(along([10, 12, 12, 14], [1, 1, 0, 0]))).toBe('quasi-complete');
    expect(separationOf(along([10, 12, 11, 14], [1, 1, 0, 0]))).toBe('none');
    expect(separationOf(along([10, 12], [1, 1]))).toBe('all-the-same');
  });

  it('sees a slanted line between two covariates', () => {
    const at = (power: number, speed: number, successes: 0 | 1): BinaryRow => ({
      x: [1, power, speed],
      trials: 1,
      successes,
    });
    const slanted = [at(20, 10, 1), at(30, 15, 1), at(20, 11, 0), at(30, 16, 0)];
    expect(separationOf(slanted)).toBe('complete');
    expect(separationOf([...slanted, at(25, 13, 1), at(25, 12.5, 0)])).toBe('none');
  });

  it('takes a row with both outcomes as lying on any parting line', () => {
    const rows: readonly BinaryRow[] = [
      { x: [1, 0], trials: 8, successes: 3 },
      { x: [1, 1], trials: 6, successes: 6 },
    ];
    expect(separationOf(rows)).toBe('quasi-complete');
    expect(separationOf([...rows, { x: [1, 1], trials: 2, successes: 1 }])).toBe('none');
  });

  it('agrees with sorting for one covariate, whatever its unit and origin', () => {
    const cell = fc.tuple(fc.integer({ min: 0, max: 12 }), fc.constantFrom<0 | 1>(0, 1));
    const units = fc.tuple(
      fc.double({ min: 0.001, max: 1e4, noNaN: true }),
      fc.integer({ min: -500, max: 500 }),
    );
    fc.assert(
      fc.property(
        fc.array(cell, { minLength: 2, maxLength: 15 }),
        units,
        (cells, [unit, origin]) => {
          const [yes, no] = ([1, 0] as const).map((y) =>
            cells.filter(([, outcome]) => outcome === y).map(([x]) => x),
          );
          fc.pre(yes !== undefined && no !== undefined && yes.length > 0 && no.length > 0);
          const ends = {
            yes: [Math.min(...yes), Math.max(...yes)],
            no: [Math.min(...no), Math.max(...no)],
          };
          const gap = Math.max(
            (ends.no[0] ?? 0) - (ends.yes[1] ?? 0),
            (ends.yes[0] ?? 0) - (ends.no[1] ?? 0),
          );
          const constant = cells.every(([x]) => x === cells[0]?.[0]);
          const wanted = gap > 0 ? 'complete' : gap === 0 && !constant ? 'quasi-complete' : 'none';
          const rows = along(
            cells.map(([x]) => origin + unit * x),
            cells.map(([, y]) => y),
          );
          expect(separationOf(rows)).toBe(wanted);
        },
      ),
    );
  });
});
