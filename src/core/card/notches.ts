import type { Point } from '../path/point.ts';
import type { Polyline } from '../path/polyline.ts';
import type { Card } from './card.ts';
import { notchDoubleMm, notchInsetMm, notchLegMm } from './cardMeasures.ts';

export type Corner = Card['doubledNotch'];

/** The four corner notches as scored lines; the doubled one tells which way up the card lies. */
export const notchLines = (
  card: Pick<Card, 'widthMm' | 'heightMm' | 'doubledNotch'>,
): Readonly<Record<Corner, readonly Polyline[]>> => {
  const of = (corner: Corner, right: boolean, top: boolean): readonly Polyline[] => {
    const bracket = (insetMm: number, legMm: number): Polyline => {
      const x = right ? card.widthMm - insetMm : insetMm;
      const y = top ? card.heightMm - insetMm : insetMm;
      const along = right ? -legMm : legMm;
      const up = top ? -legMm : legMm;
      return [
        [x + along, y],
        [x, y],
        [x, y + up],
      ];
    };
    const one = bracket(notchInsetMm, notchLegMm);
    return corner === card.doubledNotch
      ? [one, bracket(notchInsetMm + notchDoubleMm, notchLegMm - notchDoubleMm)]
      : [one];
  };
  return {
    'lower-left': of('lower-left', false, false),
    'lower-right': of('lower-right', true, false),
    'upper-left': of('upper-left', false, true),
    'upper-right': of('upper-right', true, true),
  };
};

/** The corners of the four notches: places known to the card, from which a photo of it is straightened. */
export const notchPoints = (
  card: Pick<Card, 'widthMm' | 'heightMm'>,
): Readonly<Record<Corner, Point>> => ({
  'lower-left': [notchInsetMm, notchInsetMm],
  'lower-right': [card.widthMm - notchInsetMm, notchInsetMm],
  'upper-left': [notchInsetMm, card.heightMm - notchInsetMm],
  'upper-right': [card.widthMm - notchInsetMm, card.heightMm - notchInsetMm],
});
