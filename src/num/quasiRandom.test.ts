import { describe, expect, it } from 'vitest';

import { centredDiscrepancy } from './centredDiscrepancy.ts';
import { halton } from './halton.ts';
import { mostSobolDimensions, sobol } from './sobol.ts';

const column = (points: readonly (readonly number[])[], d: number): readonly number[] =>
  points.map((point) => point[d] ?? NaN);

describe('evenly spread points', () => {
  it('of Sobol fill every sixteenth once in each dimension, over each block of sixteen', () => {
    const points = sobol(64, mostSobolDimensions);
    for (let start = 0; start < 64; start += 16) {
      for (let d = 0; d < mostSobolDimensions; d += 1) {
        const cells = column(points, d)
          .slice(start, start + 16)
          .map((x) => Math.floor(16 * x));
        expect(new Set(cells).size).toBe(16);
      }
    }
  });

  it('of Sobol stand where scipy 1.17.1 puts them, far out and in high dimensions', () => {
    // stats.qmc.Sobol(16, scramble=False): fast_forward(1000); random(1)
    expect(sobol(1, 16, { skip: 1000 })).toEqual([
      [
        0.2197265625, 0.0966796875, 0.5185546875, 0.6767578125, 0.2802734375, 0.9072265625,
        0.0458984375, 0.8994140625, 0.5009765625, 0.0693359375, 0.0849609375, 0.2548828125,
        0.1611328125, 0.3837890625, 0.1435546875, 0.3701171875,
      ],
    ]);
  });

  it('of Sobol go on where they were left', () => {
    expect(sobol(5, 3, { skip: 7 })).toEqual(sobol(12, 3).slice(7));
  });

  it('of Halton mirror the digits of their number', () => {
    // 11 = 1011 in base 2, 102 in base 3.
    expect(halton(1, [2, 3], { skip: 11 })).toEqual([[13 / 16, 2 / 3 + 0 / 9 + 1 / 27]]);
  });

  it('are more even than the same number of points on the diagonal', () => {
    const spread = sobol(64, 2);
    const diagonal = spread.map(([x = 0]) => [x, x]);
    expect(centredDiscrepancy(spread)).toBeLessThan(centredDiscrepancy(diagonal) / 10);
  });

  it('have the discrepancy of one point in the middle of a line: 1/12', () => {
    // Hickernell 1998 with n = 1, d = 1, x = ½: 13/12 − 2 + 1.
    expect(centredDiscrepancy([[0.5]])).toBeCloseTo(1 / 12, 15);
  });

  it('refuse more dimensions than there are direction numbers', () => {
    expect(() => sobol(1, mostSobolDimensions + 1)).toThrow(RangeError);
  });
});
