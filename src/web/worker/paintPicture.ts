import type { ProofOnDrawing } from '../../app/drawing/proveOnDrawing.ts';
import type { Point } from '../../core/path/point.ts';
import type { Polyline } from '../../core/path/polyline.ts';
import type { ProofPicture, StretchLook } from '../../core/proof/drawPicture.ts';

/** A picture as the page draws it: in mm, y downwards, its lines as path data. */
export interface PaintedPicture {
  readonly widthMm: number;
  readonly heightMm: number;
  /** In pieces that lie together, so that a screen painted in tiles looks at each only where it lies. */
  readonly lines: readonly string[];
  /** The mildest first, so that what matters lies on top; only looks that there are. */
  readonly stretches: readonly { readonly look: StretchLook; readonly data: string }[];
  /** Numbers, by how far across and down they stand, in per cent. */
  readonly marks: readonly {
    readonly number: number;
    readonly look: StretchLook;
    readonly acrossPct: number;
    readonly downPct: number;
  }[];
  readonly isSimplified: boolean;
}

/** A proof with its picture painted: what the page gets. */
export type PaintedProof = Omit<ProofOnDrawing, 'picture'> & { readonly picture: PaintedPicture };

const looks: readonly StretchLook[] = ['slow', 'warm', 'tips-burn', 'may-hang', 'not-through'];

/** Writes the picture's lines down, so that the page need not take them apart between two frames. O(points). */
export const paintPicture = ({
  box,
  lines,
  stretches,
  marks,
  isSimplified,
}: ProofPicture): PaintedPicture => {
  const size = Math.max(box.rightMm - box.leftMm, box.topMm - box.bottomMm, 1);
  const edge = size / 28;
  const widthMm = box.rightMm - box.leftMm + 2 * edge;
  const heightMm = box.topMm - box.bottomMm + 2 * edge;
  const across = (x: number): number => x - box.leftMm + edge;
  const down = (y: number): number => box.topMm - y + edge;
  const path = (points: readonly Point[]): string =>
    `M${points.map(([x, y]) => `${short(across(x))} ${short(down(y))}`).join('L')}`;
  return {
    widthMm,
    heightMm,
    lines: inPieces(lines).map((piece) => piece.map(path).join('')),
    stretches: looks.flatMap((look) => {
      const alike = stretches.filter((stretch) => stretch.look === look);
      if (alike.length === 0) return [];
      return [{ look, data: alike.map(({ points }) => path(points)).join('') }];
    }),
    marks: marks.map(({ number, look, at: [x, y] }) => ({
      number,
      look,
      acrossPct: (100 * across(x)) / widthMm,
      downPct: (100 * down(y)) / heightMm,
    })),
    isSimplified,
  };
};

/** About so many points in a piece. */
const pointsAPiece = 1500;

/** Neighbours in a drawing mostly lie together. */
const inPieces = (lines: readonly Polyline[]): readonly (readonly Polyline[])[] => {
  const pieces: Polyline[][] = [];
  let points = Infinity;
  for (const line of lines) {
    if (points >= pointsAPiece) {
      pieces.push([]);
      points = 0;
    }
    pieces.at(-1)?.push(line);
    points += line.length;
  }
  return pieces;
};

const short = (value: number): string => String(Math.round(value * 100) / 100);
