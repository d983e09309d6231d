import type { Polyline } from './polyline.ts';

/** An upright rectangle, in mm. */
export interface Box {
  readonly leftMm: number;
  readonly bottomMm: number;
  readonly rightMm: number;
  readonly topMm: number;
}

/** The smallest box around some lines; undefined where they hold no point. */
export const boxAround = (lines: readonly Polyline[]): Box | undefined => {
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const line of lines) {
    for (const [x, y] of line) {
      left = Math.min(left, x);
      right = Math.max(right, x);
      bottom = Math.min(bottom, y);
      top = Math.max(top, y);
    }
  }
  return left > right ? undefined : { leftMm: left, bottomMm: bottom, rightMm: right, topMm: top };
};

/** How far two boxes stand apart, in mm, along the axis that parts them most; negative where they overlap. */
export const gapBetween = (a: Box, b: Box): number =>
  Math.max(a.leftMm - b.rightMm, b.leftMm - a.rightMm, a.bottomMm - b.topMm, b.bottomMm - a.topMm);

/** True where `inner` lies within `outer`, to a micrometre. */
export const liesWithin = (inner: Box, outer: Box): boolean =>
  inner.leftMm >= outer.leftMm - 1e-3 &&
  inner.rightMm <= outer.rightMm + 1e-3 &&
  inner.bottomMm >= outer.bottomMm - 1e-3 &&
  inner.topMm <= outer.topMm + 1e-3;

/** The same box, wider on every side. */
export const grown = (box: Box, byMm: number): Box => ({
  leftMm: box.leftMm - byMm,
  bottomMm: box.bottomMm - byMm,
  rightMm: box.rightMm + byMm,
  topMm: box.topMm + byMm,
});
