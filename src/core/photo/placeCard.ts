import { homographyThrough, project, type Homography } from '../../num/homography.ts';
import { cholesky, choleskySolve } from '../../num/cholesky.ts';
import type { Card } from '../card/card.ts';
import type { Point } from '../path/point.ts';
import { codeToFind, marksToFind, type MarkPoint } from './marksToFind.ts';
import { lightAt, type Planes, type Seen } from './opponent.ts';
import { signedAreaOf, type Quad } from './quads.ts';

/** Where a card lies in a picture. */
export interface Placed {
  /** From mm on the card (y up) to pixels (y down). */
  readonly toPx: Homography;
  /** How far the scored lines stand out where they should be, in their own spread. */
  readonly marked: number;
  /** The same of the card's code alone. */
  readonly coded: number;
}

/** The corners of a card in the order in which a quad has them: as the front is seen, turning with the clock. */
const cornersOf = ({ widthMm, heightMm }: Pick<Card, 'widthMm' | 'heightMm'>): readonly Point[] => [
  [0, heightMm],
  [widthMm, heightMm],
  [widthMm, 0],
  [0, 0],
];

/** With the clock, on a picture whose y points down. */
const withTheClock = (quad: Quad): Quad => {
  const [a, b, c, d] = quad;
  return signedAreaOf(quad) > 0 ? quad : [a, d, c, b];
};

/** The four ways in which a card may lie in a quad: by each corner in turn. From behind, the other way round. */
export const waysToLie = (
  card: Pick<Card, 'widthMm' | 'heightMm'>,
  quad: Quad,
  side: 'front' | 'back',
): readonly Homography[] => {
  const turning = withTheClock(quad);
  const around = side === 'front' ? turning : [...turning].reverse();
  return [0, 1, 2, 3].flatMap((turn) => {
    const through = homographyThrough(
      cornersOf(card).map((source, i) => ({ source, target: around[(i + turn) % 4] ?? source })),
    );
    return through.ok ? [through.matrix] : [];
  });
};

/** Of all ways in which the card may lie in these quads, the one in which its scored lines are seen best. */
export const placeByMarks = (planes: Planes, card: Card, quads: readonly Quad[]): Placed | null => {
  const marks = marksToFind(card);
  const few = marks.filter((_, i) => i % 5 === 0);
  const tried = quads
    .flatMap((quad) => waysToLie(card, quad, 'front'))
    .flatMap((toPx) =>
      shifted.map((by) => ({ toPx, by, seen: Math.abs(standOut({ planes, toPx }, few, by)) })),
    )
    .sort((a, b) => b.seen - a.seen);
  let best: Placed | null = null;
  const done: Homography[] = [];
  for (const { toPx, by } of tried) {
    if (done.includes(toPx)) continue;
    done.push(toPx);
    if (done.length > 3) break;
    const near = settled(planes, card, { toPx: movedBy(toPx, card, () => by), marks });
    const marked = Math.abs(standOut({ planes, toPx: near }, marks, [0, 0]));
    if (best === null || marked > best.marked) {
      const coded = Math.abs(standOut({ planes, toPx: near }, codeToFind(card), [0, 0]));
      best = { toPx: near, marked, coded };
    }
  }
  return best;
};

const shifted: readonly Point[] = [-0.7, -0.35, 0, 0.35, 0.7].flatMap((x) =>
  [-0.7, -0.35, 0, 0.35, 0.7].map((y): Point => [x, y]),
);

/** From a scored line to the untouched sheet on either side. */
const besideMm = 0.55;

/** How much lighter a place is than what lies to either side of it. */
const ridge = (seen: Seen, x: number, y: number, [nx, ny]: Point): number => {
  const [dx, dy] = [besideMm * nx, besideMm * ny];
  return lightAt(seen, x, y) - (lightAt(seen, x + dx, y + dy) + lightAt(seen, x - dx, y - dy)) / 2;
};

const mostRidge = 0.6;

/** Mean ridge over its own spread: far from 0 only where most places are ridges of one kind. */
const standOut = (seen: Seen, marks: readonly MarkPoint[], [dx, dy]: Point): number => {
  let [sum, squares, count] = [0, 0, 0];
  for (const { at, across } of marks) {
    const r = ridge(seen, at[0] + dx, at[1] + dy, across);
    if (Number.isNaN(r)) continue;
    const held = Math.max(-mostRidge, Math.min(mostRidge, r));
    sum += held;
    squares += held * held;
    count += 1;
  }
  return count < marks.length / 2 ? 0 : sum / Math.sqrt(count * squares + 1e-9);
};

/** How far from where it should be a scored line is looked for, and how finely. */
const lookMm = 0.9;
const lookStepMm = 0.1;

/** Lays the card so that its scored lines fall on those that are seen: each pulls across itself, those far off least. */
const settled = (
  planes: Planes,
  card: Card,
  { toPx: from, marks }: { readonly toPx: Homography; readonly marks: readonly MarkPoint[] },
): Homography => {
  let toPx = from;
  for (let round = 0; round < 3; round += 1) {
    const sign = Math.sign(standOut({ planes, toPx }, marks, [0, 0])) || -1;
    const reach = lookMm / (round + 1);
    const pulls = marks.flatMap(({ at, across }) => {
      let [best, off] = [0.03, NaN];
      for (let o = -reach; o <= reach; o += lookStepMm) {
        const r =
          sign * ridge({ planes, toPx }, at[0] + o * across[0], at[1] + o * across[1], across);
        if (r > best) [best, off] = [r, o];
      }
      return Number.isNaN(off) ? [] : [{ at, across, off }];
    });
    if (pulls.length < 30) return toPx;
    const move = moveBy(card, pulls);
    if (move === null) return toPx;
    toPx = movedBy(toPx, card, move);
  }
  return toPx;
};

interface Pull extends MarkPoint {
  readonly off: number;
}

const usualOffMm = 0.25;

/** The small change of a plane's picture that fits all pulls best. */
const moveBy = (card: Card, pulls: readonly Pull[]): ((at: Point) => Point) | null => {
  const row = ([x, y]: Point, [nx, ny]: Point): readonly number[] => {
    const [u, v] = [(2 * x) / card.widthMm - 1, (2 * y) / card.heightMm - 1];
    const along = u * nx * card.widthMm + v * ny * card.heightMm;
    return [nx, nx * u, nx * v, ny, ny * u, ny * v, along * u, along * v];
  };
  let found: Float64Array = new Float64Array(8);
  for (let round = 0; round < 4; round += 1) {
    const normal = Float64Array.from({ length: 64 }, (_, i) => (i % 9 === 0 ? 1e-6 : 0));
    const right = new Float64Array(8);
    for (const { at, across, off } of pulls) {
      const terms = row(at, across);
      const left = off - terms.reduce((sum, term, k) => sum + term * (found[k] ?? NaN), 0);
      const weight = 1 / (1 + (left / usualOffMm) ** 2) ** 2;
      terms.forEach((a, i) => {
        terms.forEach((b, j) => (normal[8 * i + j] = (normal[8 * i + j] ?? NaN) + weight * a * b));
        right[i] = (right[i] ?? NaN) + weight * a * off;
      });
    }
    const lower = cholesky(normal, 8);
    if (lower === null) return null;
    found = choleskySolve(lower, 8, right);
  }
  return (at) => [
    row(at, [1, 0]).reduce((sum, term, k) => sum + term * (found[k] ?? NaN), 0),
    row(at, [0, 1]).reduce((sum, term, k) => sum + term * (found[k] ?? NaN), 0),
  ];
};

const movedBy = (toPx: Homography, card: Card, move: (at: Point) => Point): Homography => {
  const pairs = cornersOf(card).map((source) => {
    const [dx, dy] = move(source);
    return { source, target: project(toPx, [source[0] + dx, source[1] + dy]) };
  });
  const through = homographyThrough(pairs);
  return through.ok ? through.matrix : toPx;
};
