import type { Card } from '../card/card.ts';
import { project, type Homography } from '../../num/homography.ts';
import { cardLooks, type CardLooks } from './cellLooks.ts';
import { lookForCards } from './findCard.ts';
import { gradeCell, type CellSeen } from './gradeCell.ts';
import type { Picture } from './picture.ts';
import { placeByMarks, waysToLie } from './placeCard.ts';

/** Photographs of one card: its front and, where there is one, its back. */
export interface Photos {
  readonly front: Picture;
  readonly back?: Picture;
}

/** A card read from photographs. */
export interface PhotoRead {
  readonly cells: readonly CellSeen[];
  /** From mm on the card to pixels of the front. */
  readonly toPx: Homography;
  /** Whether a back was given, found, and lies one way only. */
  readonly backRead: boolean;
}

/** The scored lines of the card must stand out so far where they should be, or it is not that card. */
const leastMarked = 0.55;

/**
 * Finds the card in its photographs and grades each shape: out, hanging, not through, or can't tell. Null where the card
 * is not found on the front. Without a back, hanging and not through are told apart only where a piece is tilted.
 */
export const readPhoto = (card: Card, { front, back }: Photos): PhotoRead | null => {
  const { planes, quads } = lookForCards(front);
  const placed = placeByMarks(planes, card, quads);
  if (placed === null || placed.marked < leastMarked) return null;
  const seen = cardLooks({ planes, toPx: placed.toPx }, card);
  const behind = back === undefined ? null : readBack(card, back, seen);
  return {
    cells: seen.cells.map((looks) => gradeCell(looks, behind?.get(looks.cell))),
    toPx: placed.toPx,
    backRead: behind !== null,
  };
};

/** Two ways to lie that agree with the front about as well as each other are no way. */
const clearBy = 0.1;
const leastAgreement = 0.8;

/** What the back looks like, lying so that its holes are where the front has them; null where that is not clear. */
const readBack = (
  card: Card,
  back: Picture,
  front: CardLooks,
): ReadonlyMap<string, CardLooks['cells'][number]> | null => {
  const { planes, quads } = lookForCards(back);
  const ways = quads
    .slice(0, 4)
    .flatMap((quad) => waysToLie(card, quad, 'back'))
    .map((toPx) => {
      const looks = cardLooks({ planes, toPx }, card);
      return { toPx, looks, agrees: agreement(front, looks) };
    })
    .sort((a, b) => b.agrees - a.agrees);
  const [best] = ways;
  if (best === undefined || best.agrees < leastAgreement) return null;
  const others = ways.filter(({ toPx }) => !liesAlike(card, toPx, best.toPx));
  if (others.some(({ agrees }) => agrees > best.agrees - clearBy)) return null;
  return new Map(best.looks.cells.map((looks) => [looks.cell, looks]));
};

/** Of all shapes, how far both sides say the same of how much of it is there; holes and pieces count alike. */
const agreement = (front: CardLooks, back: CardLooks): number => {
  const of = (isHole: boolean): number => {
    const shares = front.cells.flatMap(({ sheet }, i) =>
      sheet < 0.5 === isHole ? [1 - Math.abs(sheet - (back.cells[i]?.sheet ?? NaN))] : [],
    );
    return shares.length === 0 ? NaN : shares.reduce((sum, one) => sum + one, 0) / shares.length;
  };
  const both = [of(true), of(false)].filter((one) => !Number.isNaN(one));
  return both.reduce((sum, one) => sum + one, 0) / both.length;
};

/** Whether two places of the same card are one, found twice. */
const liesAlike = ({ widthMm, heightMm }: Card, a: Homography, b: Homography): boolean => {
  const [ax, ay] = project(a, [widthMm * 0.3, heightMm * 0.3]);
  const [bx, by] = project(b, [widthMm * 0.3, heightMm * 0.3]);
  return Math.hypot(ax - bx, ay - by) < 20;
};
