import { describe, expect, it } from 'vitest';
import { shapeOutline, testShapeNames } from '../card/testShapes.ts';
import { insideTest } from '../path/insideTest.ts';
import { shapeGrid } from './shapeGrid.ts';

describe('where a shape is looked at', () => {
  it.each(testShapeNames)('%s: the piece within, the sheet around, the cut between', (shape) => {
    const sizeMm = 12;
    const inside = insideTest(shapeOutline(shape, sizeMm));
    const { within, around, rim } = shapeGrid({ shape, sizeMm });
    expect(within.length).toBeGreaterThan(30);
    expect(within.every(inside)).toBe(true);
    expect(around.some(inside)).toBe(false);
    for (const { at, outward } of rim) {
      expect(Math.hypot(...outward)).toBeCloseTo(1, 9);
      expect(inside([at[0] - 0.02 * outward[0], at[1] - 0.02 * outward[1]])).toBe(true);
      expect(inside([at[0] + 0.02 * outward[0], at[1] + 0.02 * outward[1]])).toBe(false);
    }
  });
});
