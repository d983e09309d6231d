import { homographyThrough, type Homography } from '../../num/homography.ts';
import type { Point } from '../path/point.ts';
import { lightOn, luminanceOf } from '../photo/linearLight.ts';
import type { Picture } from '../photo/picture.ts';
import { signedAreaOf, type Quad } from '../photo/quads.ts';
import type { ShadesLaid } from './markStrip.ts';

/**
 * How far a corner is moved, from rough to fine, to where the bands say that it is, mm: a finger is off by some of them. An edge
 * is looked at from so far on both sides of it, mm: what is finer needs to look nearer.
 */
const stages = [
  { moveMm: 1.6, besideMm: 0.9 },
  { moveMm: 0.8, besideMm: 0.7 },
  { moveMm: 0.4, besideMm: 0.4 },
  { moveMm: 0.2, besideMm: 0.25 },
] as const;
const roundsEach = 4;
/** Before that all are shifted together to the best of a grid, so that no band is taken for the gap beside it. */
const shiftsMm = [-3, -2, -1, 0, 1, 2, 3] as const;
const shiftBesideMm = 1.2;

/** From one place to the next along an edge, and up an end, which is short but tells most of left and right, mm. */
const alongMm = 2;
const upEndsMm = 0.5;

/**
 * Where the shades of a strip lie on a photograph, from mm to pixels: pointed at by a person, drawn to where the edges of the
 * bands stand out most. `corners`: the signs about the shades, as shares of width and height, from the upper left one on.
 * Undefined where they are no four corners.
 */
export const placeShades = (
  laid: ShadesLaid,
  picture: Picture,
  corners: Quad,
): Homography | undefined => {
  const from = inPixels(corners, picture);
  let at = from;
  let toPx = through(laid, at);
  let most = -Infinity;
  if (toPx === undefined) return undefined;
  const perMm = Math.sqrt(Math.abs(signedAreaOf(at)) / areaOf(laid));
  for (const shift of shifts(perMm)) {
    const moved = movedBy(from, shift);
    const tried = through(laid, moved);
    const seen = tried === undefined ? -Infinity : edgesSeen(laid, picture, tried, shiftBesideMm);
    if (tried !== undefined && seen > most) [most, at, toPx] = [seen, moved, tried];
  }
  for (const { moveMm, besideMm } of stages) {
    let best = edgesSeen(laid, picture, toPx, besideMm);
    for (let round = 0; round < roundsEach; round += 1) {
      const before = best;
      for (const move of moves(moveMm * perMm)) {
        const moved = movedBy(at, move);
        const tried = through(laid, moved);
        const seen = tried === undefined ? -Infinity : edgesSeen(laid, picture, tried, besideMm);
        if (tried !== undefined && seen > best) [best, at, toPx] = [seen, moved, tried];
      }
      if (best === before) break;
    }
  }
  return toPx;
};

/** With the clock from the same corner on, on a picture whose y points down. */
const inPixels = (corners: Quad, { widthPx, heightPx }: Picture): Quad => {
  const px = corners.map(([x, y]): Point => [x * widthPx, y * heightPx]);
  const [a, b, c, d] = asQuad(px);
  return signedAreaOf([a, b, c, d]) > 0 ? [a, b, c, d] : [a, d, c, b];
};

const asQuad = (points: readonly Point[]): Quad => {
  const [a, b, c, d] = points;
  if (a === undefined || b === undefined || c === undefined || d === undefined)
    throw new Error('a quad has four corners');
  return [a, b, c, d];
};

const areaOf = ({ signs }: ShadesLaid): number => Math.abs(signedAreaOf(signs));

const through = ({ signs }: ShadesLaid, at: Quad): Homography | undefined => {
  const found = homographyThrough(signs.map((source, i) => ({ source, target: at[i] ?? source })));
  return found.ok ? found.matrix : undefined;
};

/** Which corners are moved together: all, then each side, then each by itself, since what lies askew as a whole is not mended corner by corner. */
const together = [
  [0, 1, 2, 3],
  ...[
    [0, 1],
    [2, 3],
    [1, 2],
    [3, 0],
  ],
  ...[[0], [1], [2], [3]],
] as const;

const moves = (byPx: number): readonly Move[] =>
  together.flatMap((corners) =>
    (
      [
        [byPx, 0],
        [-byPx, 0],
        [0, byPx],
        [0, -byPx],
      ] as const
    ).map((by): Move => ({ corners, by })),
  );

const shifts = (perMm: number): readonly Move[] =>
  shiftsMm.flatMap((x) =>
    shiftsMm.map((y): Move => ({ corners: [0, 1, 2, 3], by: [x * perMm, y * perMm] })),
  );

interface Move {
  readonly corners: readonly number[];
  readonly by: Point;
}

const movedBy = (at: Quad, { corners, by: [dx, dy] }: Move): Quad =>
  asQuad(at.map(([x, y], i): Point => (corners.includes(i) ? [x + dx, y + dy] : [x, y])));

/** How far what lies within the bands differs from the bare sheet just beside them, summed over their edges. */
const edgesSeen = (
  { bands }: ShadesLaid,
  picture: Picture,
  toPx: Homography,
  besideMm: number,
): number => {
  const light = lightOn(picture, toPx);
  const lnAt = (x: number, y: number): number => {
    const seen = light(x, y);
    return seen === undefined ? NaN : Math.log(luminanceOf(seen) + dark);
  };
  let sum = 0;
  for (const { leftMm, rightMm, bottomMm, topMm } of bands) {
    let bare = 0;
    const along = placesBetween(leftMm, rightMm, alongMm);
    for (const x of along) {
      const outside = lnAt(x, topMm + besideMm) + lnAt(x, bottomMm - besideMm);
      sum += outside - lnAt(x, topMm - besideMm) - lnAt(x, bottomMm + besideMm);
      bare += outside / (2 * along.length);
    }
    for (const y of placesBetween(bottomMm, topMm, upEndsMm)) {
      sum += stepOver(lnAt(leftMm - besideMm, y), lnAt(leftMm + besideMm, y), bare);
      sum += stepOver(lnAt(rightMm + besideMm, y), lnAt(rightMm - besideMm, y), bare);
    }
  }
  // All are darker than the sheet or all are paler; laid over the gaps they would be both. Off the picture nothing is seen.
  return Number.isNaN(sum) ? -Infinity : Math.abs(sum);
};

/** Beyond the ends the paper begins, which is paler than sheet and band: its edge is none of a band's. */
const stepOver = (outside: number, inside: number, bare: number): number =>
  outside > Math.max(bare, inside) + clearlyPaler ? 0 : outside - inside;

const clearlyPaler = 0.1;

const placesBetween = (from: number, to: number, everyMm: number): readonly number[] => {
  const count = Math.floor((to - from) / everyMm);
  return Array.from({ length: count }, (_, k) => from + ((k + 0.5) / count) * (to - from));
};

const dark = 0.01;
