import type { Homography } from '../../num/homography.ts';
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

/** The planes of a picture, pixel by pixel. */
export const planesOf = ({ widthPx, heightPx, rgb }: Picture): Planes => {
  const count = widthPx * heightPx;
  const [light, redness, blueness] = emptyPlanes(count);
  for (let k = 0, at = 0; k < count; k += 1, at += 3) {
    const r = logs[rgb[at] ?? NaN] ?? NaN;
    const g = logs[rgb[at + 1] ?? NaN] ?? NaN;
    const b = logs[rgb[at + 2] ?? NaN] ?? NaN;
    light[k] = (r + g + b) / 3;
    redness[k] = r - g;
    blueness[k] = b - g;
  }
  return { widthPx, heightPx, channels: [light, redness, blueness] };
};

/** The same made `shrink` times smaller, each pixel the mean of those that it stands for. */
export const smaller = (planes: Planes, shrink: number): Planes => {
  const widthPx = Math.floor(planes.widthPx / shrink);
  const heightPx = Math.floor(planes.heightPx / shrink);
  const channels = emptyPlanes(widthPx * heightPx);
  planes.channels.forEach((from, c) => {
    const to = channels[c] ?? new Float32Array(0);
    for (let y = 0; y < heightPx; y += 1)
      for (let x = 0; x < widthPx; x += 1) {
        let sum = 0;
        for (let j = 0; j < shrink; j += 1) {
          const at = (y * shrink + j) * planes.widthPx + x * shrink;
          for (let i = 0; i < shrink; i += 1) sum += from[at + i] ?? NaN;
        }
        to[y * widthPx + x] = sum / (shrink * shrink);
      }
  });
  return { widthPx, heightPx, channels };
};

const emptyPlanes = (count: number): [Float32Array, Float32Array, Float32Array] => [
  new Float32Array(count),
  new Float32Array(count),
  new Float32Array(count),
];

/** A plane between its pixels, by the four around; NaN outside. */
export const planeAt = (plane: Float32Array, size: Size, x: number, y: number): number => {
  const i = Math.floor(x - 0.5);
  const j = Math.floor(y - 0.5);
  if (!(i >= 0 && j >= 0 && i + 1 < size.widthPx && j + 1 < size.heightPx)) return NaN;
  return between(plane, j * size.widthPx + i, size.widthPx, x - 0.5 - i, y - 0.5 - j);
};

type Size = Pick<Planes, 'widthPx' | 'heightPx'>;

/** Of four neighbours, the upper left one at `k`. */
const between = (
  plane: Float32Array,
  k: number,
  widthPx: number,
  du: number,
  dv: number,
): number => {
  const upper = (plane[k] ?? NaN) * (1 - du) + (plane[k + 1] ?? NaN) * du;
  const lower = (plane[k + widthPx] ?? NaN) * (1 - du) + (plane[k + widthPx + 1] ?? NaN) * du;
  return upper * (1 - dv) + lower * dv;
};

/** Light and two hues, as `Planes` have them. */
export type Tone = readonly [number, number, number];

/** Where a card lies in a picture. */
export interface Seen {
  readonly planes: Planes;
  /** From mm on the card (y up) to pixels (y down). */
  readonly toPx: Homography;
}

/** The light at a place of the card, NaN where the picture does not show it. These two are asked millions of times. */
export const lightAt = ({ planes, toPx }: Seen, xMm: number, yMm: number): number => {
  const [[a, b, c], [d, e, f], [g, h, w]] = toPx;
  const under = g * xMm + h * yMm + w;
  return planeAt(
    planes.channels[0],
    planes,
    (a * xMm + b * yMm + c) / under,
    (d * xMm + e * yMm + f) / under,
  );
};

/** The tone at a place of the card; undefined where the picture does not show it. */
export const toneAt = ({ planes, toPx }: Seen, xMm: number, yMm: number): Tone | undefined => {
  const [[a, b, c], [d, e, f], [g, h, w]] = toPx;
  const under = g * xMm + h * yMm + w;
  const x = (a * xMm + b * yMm + c) / under - 0.5;
  const y = (d * xMm + e * yMm + f) / under - 0.5;
  const i = Math.floor(x);
  const j = Math.floor(y);
  const { widthPx, heightPx } = planes;
  if (!(i >= 0 && j >= 0 && i + 1 < widthPx && j + 1 < heightPx)) return undefined;
  const k = j * widthPx + i;
  const [light, redness, blueness] = planes.channels;
  return [
    between(light, k, widthPx, x - i, y - j),
    between(redness, k, widthPx, x - i, y - j),
    between(blueness, k, widthPx, x - i, y - j),
  ];
};
