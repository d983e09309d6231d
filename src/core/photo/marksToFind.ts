import type { Card } from '../card/card.ts';
import { cardParts, type DrawnPart } from '../card/cardParts.ts';
import type { Point } from '../path/point.ts';

/** A place on a scored line, and which way lies across the line. */
export interface MarkPoint {
  readonly at: Point;
  readonly across: Point;
}

const stepMm = 0.45;
const mostPoints = 1200;

/** Places on all that is scored into the card: by them a photograph says which way up it lies, and where exactly. */
export const marksToFind = (card: Card): readonly MarkPoint[] => {
  const all = placesOn(cardParts(card).marks);
  const every = Math.max(1, all.length / mostPoints);
  return Array.from(
    { length: Math.min(all.length, mostPoints) },
    (_, i) => all[Math.floor(i * every)],
  ).filter((point) => point !== undefined);
};

/** Places on the code alone: cards of one kind differ in nothing else. */
export const codeToFind = (card: Card): readonly MarkPoint[] =>
  placesOn(cardParts(card).marks.filter(({ of }) => of.what === 'code'));

const placesOn = (parts: readonly DrawnPart[]): readonly MarkPoint[] =>
  parts.flatMap(({ polylines }) =>
    polylines.flatMap((line) =>
      line.slice(1).flatMap(([x, y], i): readonly MarkPoint[] => {
        const [x0, y0] = line[i] ?? [x, y];
        const length = Math.hypot(x - x0, y - y0);
        if (!(length > 0.2)) return [];
        const across: Point = [(y0 - y) / length, (x - x0) / length];
        const count = Math.max(1, Math.floor(length / stepMm));
        return Array.from({ length: count }, (_, k): MarkPoint => {
          const t = (k + 0.5) / count;
          return { at: [x0 + t * (x - x0), y0 + t * (y - y0)], across };
        });
      }),
    ),
  );
