import { describe, expect, it } from 'vitest';

import { boxAround } from '../path/box.ts';
import { isSimple } from '../../../test/reference/crossing.ts';
import { distanceMm } from '../path/point.ts';
import { isClosed, lengthMm, segmentsOf, signedAreaMm2, type Polyline } from '../path/polyline.ts';
import {
  shapeBoxMm,
  shapeLengthMm,
  shapeOutline,
  testShapeNames,
  testShapes,
} from './testShapes.ts';

/** How far the line turns at each corner, in degrees, 0 to 180. */
const turns = (line: Polyline): readonly number[] => {
  const segments = segmentsOf(line);
  return segments.map(([a, b], i) => {
    const [, c] = segments[(i + 1) % segments.length] ?? [a, b];
    const turn = Math.atan2(c[1] - b[1], c[0] - b[0]) - Math.atan2(b[1] - a[1], b[0] - a[0]);
    return Math.abs((Math.atan2(Math.sin(turn), Math.cos(turn)) * 180) / Math.PI);
  });
};

it('names every shape of the registry', () => {
  expect([...testShapeNames].sort()).toEqual(Object.keys(testShapes).sort());
});

describe.each(testShapeNames)('the shape %s', (shape) => {
  const outline = shapeOutline(shape, 14);

  it('is one closed line that never touches itself', () => {
    expect(isClosed(outline)).toBe(true);
    expect(isSimple(outline)).toBe(true);
  });

  it('is as big as it says, with its middle where it was put', () => {
    const box = boxAround([shapeOutline(shape, 14, [30, 40])]);
    const { widthMm, heightMm } = shapeBoxMm(shape, 14);
    expect(Math.max(widthMm, heightMm)).toBeCloseTo(14, 9);
    expect(box?.leftMm).toBeCloseTo(30 - widthMm / 2, 9);
    expect(box?.topMm).toBeCloseTo(40 + heightMm / 2, 9);
  });

  it('is not so slim that it slips through where its box would not', () => {
    const { widthMm, heightMm } = shapeBoxMm(shape, 14);
    expect(Math.min(widthMm, heightMm)).toBeGreaterThan(0.8 * 14);
  });

  it('has a length that grows with its size, of the order of the reference shape', () => {
    expect(shapeLengthMm(shape, 14)).toBeCloseTo(lengthMm(outline), 9);
    expect(shapeLengthMm(shape, 28)).toBeCloseTo(2 * shapeLengthMm(shape, 14), 9);
    expect(shapeLengthMm(shape, 14)).toBeGreaterThan(40);
    expect(shapeLengthMm(shape, 14)).toBeLessThan(120);
  });

  it('has corners and reversals, or says that it flatters', () => {
    const sharp = turns(outline).filter((degrees) => degrees >= 60).length;
    if (testShapes[shape].flatters) expect(sharp).toBe(0);
    else expect(sharp).toBeGreaterThanOrEqual(5);
  });

  it('leaves no web so thin that it burns away: corners that do not follow each other stand 0.8 mm apart', () => {
    const corners = outline.filter((_, i) => (turns(outline)[i - 1] ?? 0) > 30);
    for (const [i, a] of corners.entries()) {
      for (const b of corners.slice(i + 2)) expect(distanceMm(a, b)).toBeGreaterThan(0.8);
    }
  });
});

it('has at least four shapes with corners, and one circle whose length is π times its width (Euclid)', () => {
  expect(testShapeNames.filter((shape) => !testShapes[shape].flatters).length).toBeGreaterThan(3);
  expect(shapeLengthMm('circle', 20)).toBeCloseTo(Math.PI * 20, 1);
  expect(Math.abs(signedAreaMm2(shapeOutline('circle', 20)))).toBeCloseTo(Math.PI * 100, 0);
});
