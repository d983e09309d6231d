import type { Card } from '../card/card.ts';
import { project, type Homography } from '../../num/homography.ts';
import { problemOf, type Problem } from '../problem.ts';
import { cardLooks, type CardLooks } from './cellLooks.ts';
import { lookAtCorners, lookForCards } from './findCard.ts';
import { cutLine } from './cutLine.ts';
import { goodContrast, gradeCell, type BackLooks, type CellSeen } from './gradeCell.ts';
import { quiteSure } from './photoScore.ts';
import type { Picture } from './picture.ts';
import type { Quad } from './quads.ts';
import { shapeGrid, type ShapeGrid } from './shapeGrid.ts';
import { placeByMarks, waysToLie } from './placeCard.ts';

/** Photographs of one card: its front and, where there is one, its back. */
export interface Photos {
  readonly front: Picture;
  readonly back?: Picture;
  /** Where a person sees the card's four corners on the front, in turn, as shares of its width and height from the upper left. */
  readonly corners?: Quad;
}

/** A card read from photographs. */
export interface PhotoRead {
  /** False where the card is not on the picture of its front: then no cell is read. */
  readonly found: boolean;
  readonly cells: readonly CellSeen[];
  /** From mm on the card to pixels of the front. */
  readonly toPx?: Homography;
  /** The same to those of the back, where it could be laid over the front. */
  readonly backToPx?: Homography;
  readonly remarks: readonly Problem[];
}

/** What is under way, one after another. */
export type PhotoStep = 'finding' | 'grading' | 'back';

/** The scored lines of the card must stand out so far where they should be, or it is not that card. */
const leastMarked = 0.55;
/** And those of its code so far: other codes of four signs reach 0.55 at most where one sign is not part of another. */
const leastCoded = 0.6;

/**
 * Finds the card in its photographs and grades each shape: out, hanging, not through, or can't tell. Without a back,
 * hanging and not through are told apart only where a piece is tilted. `tell` hears of each step as it begins.
 */
export const readPhoto = (
  card: Card,
  { front, back, corners }: Photos,
  tell: (step: PhotoStep) => void = () => undefined,
): PhotoRead => {
  tell('finding');
  const { planes, quads } =
    corners === undefined ? lookForCards(front) : lookAtCorners(front, corners);
  const placed = placeByMarks(planes, card, quads);
  // Whoever points at the card says that it is there.
  const least = corners === undefined ? leastMarked : 0;
  if (placed === null || placed.marked < least)
    return { found: false, cells: [], remarks: [problemOf('photo-card-not-found')] };
  tell('grading');
  const grid = shapeGrid(card);
  const seen = cardLooks({ planes, toPx: placed.toPx }, card, grid);
  if (back !== undefined) tell('back');
  const behind = back === undefined ? null : readBack(back, { card, grid, front: seen });
  const cells = seen.cells.map((looks) => gradeCell(looks, behind?.looks.get(looks.cell)));
  return {
    found: true,
    cells,
    toPx: placed.toPx,
    ...(behind === null ? {} : { backToPx: behind.toPx }),
    remarks: [
      ...(placed.coded < leastCoded ? [problemOf('photo-code-unlike', { code: card.code })] : []),
      ...(seen.cells.some(({ contrast }) => contrast < goodContrast)
        ? [problemOf('photo-little-contrast')]
        : []),
      ...(back !== undefined && behind === null ? [problemOf('photo-back-not-clear')] : []),
      ...(back === undefined ? withoutBack(cells) : []),
      ...count('photo-cant-tell', cells.filter(({ grade }) => grade === 'cant-tell').length),
    ],
  };
};

const withoutBack = (cells: readonly CellSeen[]): readonly Problem[] =>
  count(
    'photo-no-back',
    cells.filter(({ grade, sure }) => (grade === 'stays' || grade === 'hangs') && sure < quiteSure)
      .length,
  );

const count = (code: 'photo-no-back' | 'photo-cant-tell', of: number): readonly Problem[] =>
  of === 0 ? [] : [problemOf(code, { count: of })];

/** Two ways to lie that agree with the front about as well as each other are no way. */
const clearBy = 0.1;
const leastAgreement = 0.8;

interface Behind {
  readonly toPx: Homography;
  readonly looks: ReadonlyMap<string, BackLooks>;
}

/** What the back looks like, lying so that its holes are where the front has them; null where that is not clear. */
const readBack = (
  back: Picture,
  {
    card,
    grid,
    front,
  }: { readonly card: Card; readonly grid: ShapeGrid; readonly front: CardLooks },
): Behind | null => {
  const { planes, quads } = lookForCards(back);
  const ways = quads
    .slice(0, 4)
    .flatMap((quad) => waysToLie(card, quad, 'back'))
    .map((toPx) => {
      const looks = cardLooks({ planes, toPx }, card, grid);
      return { toPx, looks, agrees: agreement(front, looks) };
    })
    .sort((a, b) => b.agrees - a.agrees);
  const [best] = ways;
  if (best === undefined || best.agrees < leastAgreement) return null;
  const others = ways.filter(({ toPx }) => !liesAlike(card, toPx, best.toPx));
  if (others.some(({ agrees }) => agrees > best.agrees - clearBy)) return null;
  const looks = card.cells.flatMap(({ id, xMm, yMm }, i): readonly [string, BackLooks][] => {
    const found = best.looks.cells[i];
    const line = cutLine({ planes, toPx: best.toPx }, grid, [xMm, yMm]);
    return found === undefined ? [] : [[id, { ...found, ...line }]];
  });
  return { toPx: best.toPx, looks: new Map(looks) };
};

/** Of all shapes and the window, how far both sides say the same of what is there; holes and pieces count alike. */
const agreement = (front: CardLooks, back: CardLooks): number => {
  const pairs = [
    ...front.cells.map(({ sheet }, i) => [sheet, back.cells[i]?.sheet]),
    [front.window, back.window],
  ];
  const of = (isHole: boolean): readonly number[] => {
    const shares = pairs.flatMap(([one, other]) =>
      one === undefined || other === undefined || one < 0.5 !== isHole
        ? []
        : [1 - Math.abs(one - other)],
    );
    return shares.length === 0 ? [] : [shares.reduce((sum, one) => sum + one, 0) / shares.length];
  };
  const both = [...of(true), ...of(false)];
  return both.reduce((sum, one) => sum + one, 0) / both.length;
};

/** Whether two places of the same card are one, found twice. */
const liesAlike = ({ widthMm, heightMm }: Card, a: Homography, b: Homography): boolean => {
  const [ax, ay] = project(a, [widthMm * 0.3, heightMm * 0.3]);
  const [bx, by] = project(b, [widthMm * 0.3, heightMm * 0.3]);
  return Math.hypot(ax - bx, ay - by) < 20;
};
