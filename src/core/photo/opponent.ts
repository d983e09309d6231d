import { linearFromSrgb8 } from '../../num/colour.ts';
import type { Picture } from './picture.ts';

/**
 * A picture in the colours that reading goes by, one plane each: the logarithm of its light, and two of its hue that no
 * change of light alters. Less than a hundredth of full light counts as dark: below it is noise.
 */
export interface Planes {
  readonly widthPx: number;
  readonly heightPx: number;
  /** ln of the mean light, then ln of red over green, ln of blue over green. */
  readonly channels: readonly [Float32Array, Float32Array, Float32Array];
}

const darkest = 0.01;
const logs = Float32Array.from({ length: 256 }, (_, i) => Math.log(linearFromSrgb8(i) + darkest));

/** The planes of a picture made `shrink` times smaller, each pixel the mean of those that it stands for. */
export const planesOf = (picture: Picture, shrink: number): Planes => {
  const widthPx = Math.floor(picture.widthPx / shrink);
  const heightPx = Math.floor(picture.heightPx / shrink);
  const channels = [0, 1, 2].map(() => new Float32Array(widthPx * heightPx));
  const [light, redness, blueness] = channels;
  if (light === undefined || redness === undefined || blueness === undefined)
    throw new Error('three planes');
  const { rgb } = picture;
  for (let y = 0; y < heightPx; y += 1)
    for (let x = 0; x < widthPx; x += 1) {
      let [r, g, b] = [0, 0, 0];
      for (let j = 0; j < shrink; j += 1) {
        let at = 3 * ((y * shrink + j) * picture.widthPx + x * shrink);
        for (let i = 0; i < shrink; i += 1, at += 3) {
          r += logs[rgb[at] ?? 0] ?? NaN;
          g += logs[rgb[at + 1] ?? 0] ?? NaN;
          b += logs[rgb[at + 2] ?? 0] ?? NaN;
        }
      }
      const count = shrink * shrink;
      const k = y * widthPx + x;
      light[k] = (r + g + b) / (3 * count);
      redness[k] = (r - g) / count;
      blueness[k] = (b - g) / count;
    }
  return { widthPx, heightPx, channels: [light, redness, blueness] };
};

/** A plane between its pixels, by the four around; NaN outside. */
export const planeAt = (
  plane: Float32Array,
  { widthPx, heightPx }: Pick<Planes, 'widthPx' | 'heightPx'>,
  x: number,
  y: number,
): number => {
  const [u, v] = [x - 0.5, y - 0.5];
  const [i, j] = [Math.floor(u), Math.floor(v)];
  if (!(i >= 0 && j >= 0 && i + 1 < widthPx && j + 1 < heightPx)) return NaN;
  const [du, dv] = [u - i, v - j];
  const k = j * widthPx + i;
  const upper = (plane[k] ?? NaN) * (1 - du) + (plane[k + 1] ?? NaN) * du;
  const lower = (plane[k + widthPx] ?? NaN) * (1 - du) + (plane[k + widthPx + 1] ?? NaN) * du;
  return upper * (1 - dv) + lower * dv;
};
