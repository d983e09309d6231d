import type { Place } from '../card/card.ts';
import { wordLettering } from '../card/lettering.ts';
import { textWidthMm, writeText } from '../card/letters.ts';
import type { Point } from '../path/point.ts';
import { closed, type Polyline } from '../path/polyline.ts';

/** The lines of a comb or slot card by what cuts them. */
export interface KerfCardLines {
  readonly marks: readonly Polyline[];
  /** What lies inside a part, or parts it: cut before anything is freed. */
  readonly inside: readonly Polyline[];
  readonly outlines: readonly Polyline[];
}

export const rectangleOf = ({ xMm, yMm, widthMm, heightMm }: Place): Polyline =>
  closed([
    [xMm, yMm],
    [xMm + widthMm, yMm],
    [xMm + widthMm, yMm + heightMm],
    [xMm, yMm + heightMm],
  ]);

/** A word in the middle of a place. */
export const labelAt = (text: string, [x, y]: Point): readonly Polyline[] =>
  writeText(
    text,
    [x - textWidthMm(text, wordLettering) / 2, y - wordLettering.capMm / 2],
    wordLettering,
  );
