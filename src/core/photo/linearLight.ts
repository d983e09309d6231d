import { linearFromSrgb8, srgbAsPrinted, type Triple } from '../../num/colour.ts';
import { project, type Homography } from '../../num/homography.ts';
import type { Picture } from './picture.ts';

/** The light at a place of a flat thing on a photograph, in mm of that thing: linear red, green, blue, 0–1; undefined off it. */
export type LightOn = (xMm: number, yMm: number) => Triple | undefined;

const linear = Float64Array.from({ length: 256 }, (_, component) => linearFromSrgb8(component));

/** Looks at a photograph through a map from mm to pixels, between the middles of four pixels. */
export const lightOn =
  ({ widthPx, heightPx, rgb }: Picture, toPx: Homography): LightOn =>
  (xMm, yMm) => {
    const [px, py] = project(toPx, [xMm, yMm]);
    const [u, v] = [px - 0.5, py - 0.5];
    const [i, j] = [Math.floor(u), Math.floor(v)];
    if (!(i >= 0 && j >= 0 && i + 1 < widthPx && j + 1 < heightPx)) return undefined;
    const [du, dv] = [u - i, v - j];
    const at = 3 * (j * widthPx + i);
    const below = at + 3 * widthPx;
    const of = (k: number): number => linear[rgb[k] ?? NaN] ?? NaN;
    const between = (k: number): number =>
      (of(at + k) * (1 - du) + of(at + 3 + k) * du) * (1 - dv) +
      (of(below + k) * (1 - du) + of(below + 3 + k) * du) * dv;
    return [between(0), between(1), between(2)];
  };

/** The luminance of linear light, white being 1: the middle row of sRGB's matrix (IEC 61966-2-1). */
export const luminanceOf = ([red, green, blue]: Triple): number =>
  ofRed * red + ofGreen * green + ofBlue * blue;

const [ofRed, ofGreen, ofBlue] = srgbAsPrinted.toXyz[1];
