import sharp from 'sharp';
import { tonesOnPhoto } from '../../src/core/marking/tonesOnPhoto.ts';
import { seededRandom, type SeededRandom } from '../../src/num/seededRandom.ts';
import type { Picture } from '../../src/core/photo/picture.ts';
import { asJpeg } from './asJpeg.ts';
import { renderStrip, type StripScene } from './renderStrip.ts';

/** How far a camera is from drawing tones as the standard has them, and paper from what it is held to be. By judgement. */
const moods = {
  exact: { gammaOff: 0, mostS: 0, paperSd: 0 },
  fair: { gammaOff: 0.05, mostS: 0.05, paperSd: 1.5 },
  hard: { gammaOff: 0.05, mostS: 0.15, paperSd: 1.5 },
} as const;

/** Shades asked to be as far apart as this or nearer, L*. */
const evenWithinL = 2;

/** Rendered photographs of strips of shades beside paper, read and compared with what was put into them. */
export async function* tonesReport(each: number): AsyncIterable<string> {
  for (const [mood, camera] of Object.entries(moods)) {
    const off: number[] = [];
    const uneven: number[] = [];
    let [held, refusedCount] = [0, 0];
    for (let k = 0; k < each; k += 1) {
      const random = seededRandom(7000 + k);
      const scene = sceneOf(camera, k % 4 === 3, random);
      const { picture, corners } = renderStrip(scene, random);
      const read = tonesOnPhoto(scene.shades.length, await throughJpeg(picture), corners);
      if (!read.ok) {
        refusedCount += 1;
        continue;
      }
      const errors = read.value.map(({ lightness }, i) => lightness - (scene.shades[i] ?? NaN));
      off.push(...errors.map(Math.abs));
      held += read.value.filter(
        ({ standardL }, i) => Math.abs(errors[i] ?? NaN) <= 2 * standardL,
      ).length;
      uneven.push(...unevennessOf(errors, scene.shades).map(Math.abs));
    }
    yield (
      `${mood}: ${String(each)} photos, ${String(refusedCount)} refused; L* off, median ${at(off, 0.5)}, 95 in 100 ${at(off, 0.95)}, most ${at(off, 1)}; ` +
      `within what is stated (k = 2) ${percent(held, off.length)}; uneven by no more than ${String(evenWithinL)} L*: ` +
      percent(uneven.filter((one) => one <= evenWithinL).length, uneven.length)
    );
  }
}

const sceneOf = (
  { gammaOff, mostS, paperSd }: (typeof moods)[keyof typeof moods],
  isPale: boolean,
  random: SeededRandom,
): StripScene => {
  const between = (least: number, most: number): number =>
    least + (most - least) * random.uniform();
  const shades = Array.from(
    { length: 8 },
    (_, i) => (isPale ? 32 + 4 * i : 72 - 6 * i) + between(-1, 1),
  );
  return {
    ...{ shades, sheet: isPale ? 27 : 78, grain: between(0.01, 0.06) },
    ...{ paper: 94 + paperSd * random.normal(), hasPaper: true, sheetTint: [1, 1, 1] },
    lightTint: [1, between(0.9, 1), between(0.75, 1)],
    falloff: [between(-0.4, 0.4), between(-0.4, 0.4)],
    exposure: between(0.5, 0.85),
    ...{ gamma: 1 + between(-gammaOff, gammaOff), sCurve: between(0, mostS) },
    ...{ noise: between(0.01, 0.06), tilt: between(0, 0.12), fingerMm: 2.5 },
  };
};

const throughJpeg = async (picture: Picture): Promise<Picture> => {
  const { data, info } = await sharp(await asJpeg(picture, 85))
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { widthPx: info.width, heightPx: info.height, rgb: new Uint8Array(data) };
};

/** What is left of the errors where the darkest and the palest are taken as read: even steps ask for no more. */
const unevennessOf = (errors: readonly number[], shades: readonly number[]): readonly number[] => {
  const [first = NaN, last = NaN] = [errors[0], errors.at(-1)];
  const [from = NaN, to = NaN] = [shades[0], shades.at(-1)];
  return errors.map(
    (error, i) => error - first - ((last - first) * ((shades[i] ?? NaN) - from)) / (to - from),
  );
};

const at = (values: readonly number[], p: number): string => {
  const sorted = values.toSorted((a, b) => a - b);
  return (sorted[Math.floor(p * (sorted.length - 1))] ?? NaN).toFixed(2);
};

const percent = (part: number, of: number): string => `${((100 * part) / of).toFixed(1)} %`;
