import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { Point } from '../../core/path/point.ts';
import { unfold } from './unfold.ts';

const distinct = fc
  .uniqueArray(fc.tuple(fc.integer({ min: 0, max: 99 }), fc.integer({ min: 0, max: 99 })), {
    minLength: 3,
    maxLength: 12,
    selector: ([x, y]) => `${String(x)} ${String(y)}`,
  })
  .map((points): readonly Point[] => points);
const passes = fc.integer({ min: 1, max: 6 });

describe('a line that goes over itself', () => {
  it('is a loop and how often it is run through', () => {
    fc.assert(
      fc.property(distinct, passes, (corners, times) => {
        const [first = [0, 0]] = corners;
        const loop = [...corners, first];
        const run = Array.from({ length: times }, () => loop.slice(1)).flat();
        expect(unfold([first, ...run])).toEqual({ points: loop, passes: times });
      }),
    );
  });

  it('is an open line there and back', () => {
    fc.assert(
      fc.property(distinct, passes, (line, times) => {
        const back = [...line].reverse();
        const run = Array.from({ length: times }, (_, i) =>
          (i % 2 === 0 ? line : back).slice(1),
        ).flat();
        expect(unfold([...line.slice(0, 1), ...run])).toEqual({ points: line, passes: times });
      }),
    );
  });

  it('is itself where it does not repeat', () => {
    expect(
      unfold([
        [0, 0],
        [1, 0],
        [2, 0],
        [3, 1],
      ]),
    ).toMatchObject({ passes: 1 });
    expect(
      unfold([
        [0, 0],
        [1, 0],
      ]),
    ).toMatchObject({ passes: 1 });
  });
});
