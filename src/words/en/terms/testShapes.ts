import type { TestShape } from '../../../core/card/testShapes.ts';

/** What the test shapes are called. */
export const shapeWords = {
  star: 'star',
  key: 'key',
  comb: 'comb',
  hook: 'hook',
  circle: 'circle',
} as const satisfies Record<TestShape, string>;
