import { boxAround } from '../path/box.ts';
import type { CardDrawing, DrawnLayer } from './cardDrawing.ts';

/** A user's own drawing on the page that it came on, which is made larger where lines reach over it. */
export const drawingOnPage = (
  layers: readonly DrawnLayer[],
  page: { readonly widthMm: number; readonly heightMm: number } | undefined,
): CardDrawing => {
  const box = boxAround(layers.flatMap(({ polylines }) => polylines));
  return {
    widthMm: Math.max(page?.widthMm ?? 0, box?.rightMm ?? 0),
    heightMm: Math.max(page?.heightMm ?? 0, box?.topMm ?? 0),
    layers,
  };
};
