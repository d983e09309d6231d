import { homographyThrough, project, type Homography } from '../../src/num/homography.ts';
import type { SeededRandom } from '../../src/num/seededRandom.ts';
import type { Point } from '../../src/core/path/point.ts';
import { shadesLaid } from '../../src/core/marking/markStrip.ts';
import type { Picture } from '../../src/core/photo/picture.ts';
import type { Quad } from '../../src/core/photo/quads.ts';

/** A strip of shades as it lies under a phone, all of it known. Lightness is CIE L*. */
export interface StripScene {
  readonly shades: readonly number[];
  readonly sheet: number;
  /** Of the sheet and all that is marked on it, relative standard deviation of its light. */
  readonly grain: number;
  readonly paper: number;
  /** Colour of the sheet, and of the light: factors on red, green and blue. */
  readonly sheetTint: readonly [number, number, number];
  readonly lightTint: readonly [number, number, number];
  /** Light falls off across and down the picture by so much from end to end. */
  readonly falloff: readonly [number, number];
  /** Paper's light in the middle of the picture, 0–1. */
  readonly exposure: number;
  /** What the camera makes of tones: each becomes its power of this, and is bent by so much towards an S. */
  readonly gamma: number;
  readonly sCurve: number;
  /** Relative noise of a pixel in the light. */
  readonly noise: number;
  /** How far corners are pushed about from a straight view, as a share of the picture; and how far fingers are off, mm. */
  readonly tilt: number;
  readonly fingerMm: number;
  readonly hasPaper: boolean;
}

const [widthPx, heightPx] = [1000, 750];

const yOf = (lightness: number): number => ((lightness + 16) / 116) ** 3;

/** A photograph of it, and where a person would point at its four signs. */
export const renderStrip = (
  scene: StripScene,
  random: SeededRandom,
): { readonly picture: Picture; readonly corners: Quad } => {
  const { bands, signs } = shadesLaid(scene.shades.length);
  const [, [right, top]] = signs;
  // Shades and 16 mm of paper on either side fill most of the picture.
  const perMm = Math.min((0.9 * widthPx) / (right + 34), (0.86 * heightPx) / (top + 6));
  const at = signs.map(([x, y]): Point => [
    widthPx / 2 + (x - (right - 2) / 2) * perMm + scene.tilt * widthPx * (random.uniform() - 0.5),
    heightPx / 2 - (y - (top - 2) / 2) * perMm + scene.tilt * heightPx * (random.uniform() - 0.5),
  ]);
  const toMm = through(at, signs);
  const toPx = through(signs, at);
  const rgb = new Uint8Array(widthPx * heightPx * 3);
  const grainPhase = Array.from({ length: 5 }, () => 7 * random.uniform());
  const lightAt = (x: number, y: number): number => {
    if (scene.hasPaper && (x < -2.8 || x > right + 0.8)) return yOf(scene.paper);
    const near = signs.some(
      ([sx, sy]) =>
        Math.max(Math.abs(x - sx), Math.abs(y - sy)) < 2.5 &&
        Math.min(Math.abs(x - sx), Math.abs(y - sy)) < 0.15 &&
        inwards(x, sx) &&
        inwards(y, sy),
    );
    const band = bands.findIndex(
      ({ leftMm, rightMm, bottomMm, topMm }) =>
        x >= leftMm && x <= rightMm && y >= bottomMm && y <= topMm,
    );
    const base = near ? 30 : (scene.shades[band] ?? scene.sheet);
    const wave = grainPhase.reduce(
      (sum, phase, k) =>
        sum + Math.sin(y * (1.1 + 0.9 * k) + phase + 0.4 * Math.sin(x * 0.09 + phase)),
      0,
    );
    return yOf(base) * (1 + scene.grain * 0.63 * wave);
  };
  for (let v = 0; v < heightPx; v += 1) {
    for (let u = 0; u < widthPx; u += 1) {
      const [x, y] = project(toMm, [u + 0.5, v + 0.5]);
      const light = lightAt(x, y);
      const isPaper = scene.hasPaper && (x < -2.8 || x > right + 0.8);
      const lit =
        (scene.exposure / yOf(scene.paper)) *
        (1 + scene.falloff[0] * (u / widthPx - 0.5)) *
        (1 + scene.falloff[1] * (v / heightPx - 0.5));
      for (let k = 0; k < 3; k += 1) {
        const tint = (scene.lightTint[k] ?? NaN) * (isPaper ? 1 : (scene.sheetTint[k] ?? NaN));
        const linear = light * lit * tint * (1 + scene.noise * random.normal());
        rgb[3 * (v * widthPx + u) + k] = asSeen(linear, scene);
      }
    }
  }
  const corners = signs.map(([x, y]): Point => {
    const off = (): number => scene.fingerMm * (2 * random.uniform() - 1);
    const [px, py] = project(toPx, [x + off(), y + off()]);
    return [px / widthPx, py / heightPx];
  });
  const [a, b, c, d] = corners;
  if (a === undefined || b === undefined || c === undefined || d === undefined)
    throw new Error('a strip has four signs');
  return { picture: { widthPx, heightPx, rgb }, corners: [a, b, c, d] };
};

/** The arms of a sign open towards the shades, which begin at 0. */
const inwards = (at: number, sign: number): boolean =>
  sign < 0 ? at > sign - 0.15 : at < sign + 0.15;

const through = (from: readonly Point[], to: readonly Point[]): Homography => {
  const found = homographyThrough(from.map((source, i) => ({ source, target: to[i] ?? source })));
  if (!found.ok) throw new Error('four corners lie on a line');
  return found.matrix;
};

/** To an 8-bit component: IEC 61966-2-1, then the camera's own curve. */
const asSeen = (linear: number, { gamma, sCurve }: StripScene): number => {
  const c = Math.min(1, Math.max(0, linear));
  const encoded = c <= 0.0031308 ? 12.92 * c : 1.055 * c ** (1 / 2.4) - 0.055;
  const powered = encoded ** gamma;
  const bent = powered - (sCurve * Math.sin(2 * Math.PI * powered)) / (2 * Math.PI);
  return Math.round(255 * Math.min(1, Math.max(0, bent)));
};
