import type { Place } from '../card/card.ts';
import type { Point } from '../path/point.ts';
import type { Polyline } from '../path/polyline.ts';
import { labelAt, rectangleOf, type KerfCardLines } from './cardPieces.ts';
import type { CombSheet, PlacedComb } from './combSheet.ts';

/**
 * Lines of a comb card. Every strip and the bar carry their comb's name, since strips of two combs must not be mixed; what parts
 * the strips is cut before the outline around them, which frees them.
 */
export const combLines = ({ combs }: CombSheet): KerfCardLines => ({
  marks: combs.flatMap((comb) => [
    ...stripsOf(comb).flatMap((strip) => labelAt(comb.label, middleOf(strip))),
    ...labelAt(comb.label, middleOf(comb.bar)),
  ]),
  inside: combs.flatMap(partings),
  outlines: combs.flatMap(({ block, bar }) => [rectangleOf(block), rectangleOf(bar)]),
});

const stripsOf = ({ direction, strips, nominalMm, block }: PlacedComb): readonly Place[] =>
  Array.from({ length: strips }, (_, i) => {
    const stripMm = nominalMm / strips;
    return direction === 'across'
      ? { ...block, xMm: block.xMm + i * stripMm, widthMm: stripMm }
      : { ...block, yMm: block.yMm + i * stripMm, heightMm: stripMm };
  });

const partings = (comb: PlacedComb): readonly Polyline[] =>
  stripsOf(comb)
    .slice(1)
    .map(({ xMm, yMm, widthMm, heightMm }): Polyline =>
      comb.direction === 'across'
        ? [
            [xMm, yMm],
            [xMm, yMm + heightMm],
          ]
        : [
            [xMm, yMm],
            [xMm + widthMm, yMm],
          ],
    );

const middleOf = ({ xMm, yMm, widthMm, heightMm }: Place): Point => [
  xMm + widthMm / 2,
  yMm + heightMm / 2,
];
