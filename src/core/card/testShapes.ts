import { boxAround } from '../path/box.ts';
import type { Point } from '../path/point.ts';
import { lengthMm, placed, type Polyline } from '../path/polyline.ts';
import { circle } from './shapes/circle.ts';
import { comb } from './shapes/comb.ts';
import { hook } from './shapes/hook.ts';
import { key } from './shapes/key.ts';
import { star } from './shapes/star.ts';
import type { UnitShape } from './shapes/unitShape.ts';

/** Every shape that a cell can have. A new one is a file in `shapes/` and a line here; the tests find it by itself. */
export const testShapes = { star, key, comb, hook, circle } as const satisfies Record<
  string,
  UnitShape
>;

export type TestShape = keyof typeof testShapes;

export const testShapeNames: readonly TestShape[] = Object.keys(testShapes).filter(
  (name): name is TestShape => name in testShapes,
);

/** The closed outline of a shape whose longer side is `sizeMm`, the middle of its box at `at`. */
export const shapeOutline = (shape: TestShape, sizeMm: number, at: Point = [0, 0]): Polyline =>
  placed(testShapes[shape].outline, at, sizeMm);

/** Length of cut of one shape, in mm. */
export const shapeLengthMm = (shape: TestShape, sizeMm: number): number =>
  lengthMm(testShapes[shape].outline) * sizeMm;

/** Width and height of a shape's box, in mm. */
export const shapeBoxMm = (
  shape: TestShape,
  sizeMm: number,
): { readonly widthMm: number; readonly heightMm: number } => {
  const box = boxAround([testShapes[shape].outline]);
  if (box === undefined) return { widthMm: 0, heightMm: 0 };
  return {
    widthMm: (box.rightMm - box.leftMm) * sizeMm,
    heightMm: (box.topMm - box.bottomMm) * sizeMm,
  };
};
