import {
  areaPathsD,
  differenceD,
  EndType,
  FillRule,
  inflatePathsD,
  JoinType,
  type PathD,
  type PathsD,
} from 'clipper2-ts';
import { boxAround } from '../path/box.ts';
import { insideTest } from '../path/insideTest.ts';
import type { Point } from '../path/point.ts';
import { closed, signedAreaMm2, type Polyline } from '../path/polyline.ts';
import { anyNear } from '../proof/closeCuts.ts';
import type { DrawingInParts, Part } from '../proof/partsOf.ts';

/** What a part loses when its lines are moved: a hole that closes, or a gap between two of its edges that fills. */
export interface LostDetail {
  readonly what: 'hole' | 'gap';
  /** The middle of it, mm. */
  readonly at: Point;
}

/** One part with its lines moved: outline outward, holes inward. */
export interface GrownPart {
  /** Holes first, then the outline; each with the outline of the drawing that it was. */
  readonly lines: readonly { readonly outline: number; readonly points: Polyline }[];
  readonly lost: readonly LostDetail[];
}

export interface GrownParts {
  readonly parts: readonly GrownPart[];
  /** Whether grown parts run into one another: they stood nearer than one kerf, or shared a line. */
  readonly meet: boolean;
}

/** Digits behind the point that are kept, mm: a tenth of a micrometre. */
const precision = 4;
/** A corner sharper than some 60° is cut off, not drawn out to a long point. */
const mitreLimit = 2;
/** Less than this is what flattened curves leave over, mm². */
const leastAreaMm2 = 0.02;

/**
 * The parts of a drawing with each line moved off the part by so much (half the kerf), so that what the beam leaves is as
 * drawn: outlines outward, holes inward, an island in a hole as a part of its own. Corners stay sharp. Offsetting is that of
 * Clipper2 (clipper2-ts). Near O(n log n) points a part.
 */
export const grownParts = (inParts: DrawingInParts, byMm: number): GrownParts => {
  const made = inParts.parts.map((part) => grownPart(inParts, part, byMm));
  return { parts: made, meet: anyNear(aroundParts(inParts), 2 * byMm) };
};

/** The outlines of parts, and the holes in which others lie. */
const aroundParts = ({ outlines }: DrawingInParts): readonly Polyline[] => {
  const holding = new Set(outlines.map(({ nested }) => nested.within));
  return outlines
    .filter(
      ({ nested: { depth, copyOf } }, i) =>
        copyOf === undefined && (depth % 2 === 0 || holding.has(i)),
    )
    .map(({ points }) => points);
};

const grownPart = (
  { outlines }: DrawingInParts,
  { outlines: own }: Part,
  byMm: number,
): GrownPart => {
  const drawn = own.flatMap((outline, i) => {
    const points = outlines[outline]?.points;
    return points === undefined ? [] : [{ outline, points, path: pathOf(points, i === 0) }];
  });
  const before = drawn.map(({ path }) => path);
  const paths = moved(before, byMm);
  const holes = drawn.slice(1).map((hole) => ({ ...hole, holds: insideTest(hole.points) }));
  const lines = paths.map((path) => {
    const points = closed(path.map(({ x, y }): Point => [x, y]));
    const isHole = signedAreaMm2(points) < 0;
    const from = isHole
      ? holes.find(({ holds }) => path.some(({ x, y }) => holds([x, y])))
      : undefined;
    return { isHole, outline: from?.outline ?? own[0] ?? NaN, points };
  });
  const gone = holes.filter(({ outline }) => lines.every((line) => line.outline !== outline));
  // Moved out and back again, all that is left of a gap narrower than the kerf is that it is filled.
  const gaps = differenceD(moved(paths, -byMm), before, FillRule.NonZero, precision)
    .filter((path) => Math.abs(areaPathsD([path])) > leastAreaMm2)
    .map((path) => middleOf(path.map(({ x, y }): Point => [x, y])))
    .filter((at) => !gone.some(({ holds }) => holds(at)));
  return {
    lines: lines
      .toSorted((a, b) => Number(b.isHole) - Number(a.isHole))
      .map(({ outline, points }) => ({ outline, points })),
    lost: [
      ...gone.map(({ points }): LostDetail => ({ what: 'hole', at: middleOf(points) })),
      ...gaps.map((at): LostDetail => ({ what: 'gap', at })),
    ],
  };
};

const moved = (paths: PathsD, byMm: number): PathsD =>
  inflatePathsD(paths, byMm, JoinType.Miter, EndType.Polygon, mitreLimit, precision);

/** Without its last point, which repeats the first; anticlockwise where it is an outline, clockwise where it is a hole. */
const pathOf = (points: Polyline, isOutline: boolean): PathD => {
  const path = points.slice(0, -1).map(([x, y]) => ({ x, y }));
  return signedAreaMm2(points) > 0 === isOutline ? path : path.reverse();
};

const middleOf = (line: Polyline): Point => {
  const box = boxAround([line]);
  return box === undefined
    ? [NaN, NaN]
    : [(box.leftMm + box.rightMm) / 2, (box.bottomMm + box.topMm) / 2];
};
