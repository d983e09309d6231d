import type { Card } from '../card/card.ts';
import { shapeBoxMm, shapeOutline } from '../card/testShapes.ts';
import { insideTest } from '../path/insideTest.ts';
import type { Point } from '../path/point.ts';

/** A place beside or within a shape, from the shape's middle. */
interface GridPoint {
  readonly at: Point;
  /** How far inside its outline, mm; negative outside. */
  readonly depthMm: number;
}

/** A place on a shape's outline, and which way leads out of it. */
export interface RimPoint {
  readonly at: Point;
  readonly outward: Point;
}

/** A card's shape as places to look at, the same for all its cells. */
export interface ShapeGrid {
  /** Well inside, off the cut and off the wall that a hole shows. */
  readonly within: readonly Point[];
  /** The sheet around, off the cut. */
  readonly around: readonly Point[];
  readonly rim: readonly RimPoint[];
}

const pitchMm = 0.3;
/** Off the cut by this much is the sheet, or the piece. */
const offCutMm = 0.55;
const aroundMm = 1.35;
const rimStepMm = 0.3;
const leastWithin = 40;

export const shapeGrid = ({ shape, sizeMm }: Pick<Card, 'shape' | 'sizeMm'>): ShapeGrid => {
  const outline = shapeOutline(shape, sizeMm);
  const inside = insideTest(outline);
  const { widthMm, heightMm } = shapeBoxMm(shape, sizeMm);
  const [reachX, reachY] = [widthMm / 2 + aroundMm, heightMm / 2 + aroundMm];
  const points: GridPoint[] = [];
  for (let y = -reachY; y <= reachY; y += pitchMm)
    for (let x = -reachX; x <= reachX; x += pitchMm) {
      const off = distanceTo(outline, [x, y]);
      if (off > aroundMm && !inside([x, y])) continue;
      points.push({ at: [x, y], depthMm: inside([x, y]) ? off : -off });
    }
  const deep = (least: number): readonly Point[] =>
    points.filter(({ depthMm }) => depthMm >= least).map(({ at }) => at);
  const well = deep(offCutMm);
  return {
    within: well.length >= leastWithin ? well : deep(offCutMm / 2),
    around: points.filter(({ depthMm }) => depthMm < -offCutMm).map(({ at }) => at),
    rim: rimOf(outline, inside),
  };
};

const distanceTo = (line: readonly Point[], [x, y]: Point): number => {
  let least = Infinity;
  for (let i = 0; i + 1 < line.length; i += 1) {
    const [ax, ay] = line[i] ?? [NaN, NaN];
    const [bx, by] = line[i + 1] ?? [NaN, NaN];
    const [ux, uy] = [bx - ax, by - ay];
    const t = Math.max(0, Math.min(1, ((x - ax) * ux + (y - ay) * uy) / (ux * ux + uy * uy || 1)));
    least = Math.min(least, Math.hypot(x - ax - t * ux, y - ay - t * uy));
  }
  return least;
};

const rimOf = (outline: readonly Point[], inside: (at: Point) => boolean): readonly RimPoint[] =>
  outline.slice(1).flatMap(([x, y], i): readonly RimPoint[] => {
    const [x0, y0] = outline[i] ?? [x, y];
    const length = Math.hypot(x - x0, y - y0);
    if (!(length > 0)) return [];
    const across: Point = [(y - y0) / length, (x0 - x) / length];
    const isOut = !inside([(x + x0) / 2 + 1e-3 * across[0], (y + y0) / 2 + 1e-3 * across[1]]);
    const outward: Point = isOut ? across : [-across[0], -across[1]];
    const count = Math.max(1, Math.round(length / rimStepMm));
    return Array.from({ length: count }, (_, k): RimPoint => {
      const t = (k + 0.5) / count;
      return { at: [x0 + t * (x - x0), y0 + t * (y - y0)], outward };
    });
  });
