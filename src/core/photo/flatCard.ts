import type { Card } from '../card/card.ts';
import type { Homography } from '../../num/homography.ts';
import type { Picture } from './picture.ts';

/** A picture, and where a card lies in it: from mm on the card (y up) to pixels (y down). */
export interface Shown {
  readonly picture: Picture;
  readonly toPx: Homography;
}

/**
 * The card as it would look from straight above, laid in its own frame: x to the right, its top edge on top, no other edge
 * than its own. What the photograph does not show of it is grey. `longestPx`: of its longer side. O(pixels of the result).
 */
export const flatCard = (
  { picture, toPx }: Shown,
  { widthMm, heightMm }: Pick<Card, 'widthMm' | 'heightMm'>,
  longestPx: number,
): Picture => {
  const pxPerMm = longestPx / Math.max(widthMm, heightMm);
  const [width, height] = [Math.round(widthMm * pxPerMm), Math.round(heightMm * pxPerMm)];
  const rgb = new Uint8Array(width * height * 3).fill(128);
  const [[a, b, c], [d, e, f], [g, h, w]] = toPx;
  for (let row = 0, to = 0; row < height; row += 1) {
    const y = heightMm * (1 - (row + 0.5) / height);
    for (let column = 0; column < width; column += 1, to += 3) {
      const x = (widthMm * (column + 0.5)) / width;
      const under = g * x + h * y + w;
      const u = (a * x + b * y + c) / under - 0.5;
      const v = (d * x + e * y + f) / under - 0.5;
      const [i, j] = [Math.floor(u), Math.floor(v)];
      if (!(i >= 0 && j >= 0 && i + 1 < picture.widthPx && j + 1 < picture.heightPx)) continue;
      const at = (j * picture.widthPx + i) * 3;
      for (let k = 0; k < 3; k += 1) rgb[to + k] = between(picture, at + k, u - i, v - j);
    }
  }
  return { widthPx: width, heightPx: height, rgb };
};

/** Of four neighbouring pixels, the upper left one's value at `at`. */
const between = ({ rgb, widthPx }: Picture, at: number, du: number, dv: number): number => {
  const below = at + 3 * widthPx;
  const upper = (rgb[at] ?? 0) * (1 - du) + (rgb[at + 3] ?? 0) * du;
  const lower = (rgb[below] ?? 0) * (1 - du) + (rgb[below + 3] ?? 0) * du;
  return Math.round(upper * (1 - dv) + lower * dv);
};
