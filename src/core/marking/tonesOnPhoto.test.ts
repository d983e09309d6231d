import { describe, expect, it } from 'vitest';
import { renderStrip, type StripScene } from '../../../bench/photo/renderStrip.ts';
import { seededRandom } from '../../num/seededRandom.ts';
import { tonesOnPhoto, type ToneSeen } from './tonesOnPhoto.ts';

/** Plywood under a warm lamp from one side. */
const plain: StripScene = {
  shades: [70, 64, 58, 52, 46, 40, 34, 28],
  ...{ sheet: 76, grain: 0.04, paper: 94, hasPaper: true },
  ...{ sheetTint: [1.12, 1, 0.8], lightTint: [1, 0.93, 0.8] },
  ...{ falloff: [0.3, -0.25], exposure: 0.75, gamma: 1, sCurve: 0, noise: 0.03 },
  ...{ tilt: 0.06, fingerMm: 2 },
};

const read = (scene: StripScene, seed = 1) => {
  const { picture, corners } = renderStrip(scene, seededRandom(seed));
  return tonesOnPhoto(scene.shades.length, picture, corners);
};

const tonesOf = (scene: StripScene, seed = 1): readonly ToneSeen[] => {
  const tones = read(scene, seed);
  if (!tones.ok) throw new Error(tones.problem.code);
  return tones.value;
};

/** L* of the shades, whose colour is the sheet's: the tint changes their light by what it weighs. */
const trueOf = ({ shades, sheetTint: [r, g, b] }: StripScene): readonly number[] =>
  shades.map((light) => (light + 16) * Math.cbrt(0.2126 * r + 0.7152 * g + 0.0722 * b) - 16);

const furthestOff = (scene: StripScene, seed = 1): number =>
  Math.max(
    ...tonesOf(scene, seed).map(({ lightness }, i) =>
      Math.abs(lightness - (trueOf(scene)[i] ?? NaN)),
    ),
  );

describe('the shades of a strip on a photograph', () => {
  it('are as light as they are, in light that falls off and has a colour, pointed at by a finger', () => {
    // The second finger is off so far that bands and gaps would be mistaken for each other one by one.
    for (const [seed, fingerMm] of [
      [2, 1],
      [5, 2.5],
    ] as const)
      expect(furthestOff({ ...plain, fingerMm, tilt: 0.1 }, seed)).toBeLessThan(1.5);
  });

  it('are so for paler marks on a dark sheet too', () => {
    const slate: StripScene = {
      ...plain,
      ...{ shades: [34, 40, 46, 52, 58, 64], sheet: 30, grain: 0.02, sheetTint: [1, 1, 1] },
    };
    expect(furthestOff(slate)).toBeLessThan(1);
  });

  it('are no surer than the paper and the camera', () => {
    for (const { standardL } of tonesOf(plain)) {
      expect(standardL).toBeGreaterThanOrEqual(2.5);
      expect(standardL).toBeLessThan(3.5);
    }
  });

  it('are refused where there is no paper, where it is burnt out, where all is too small or not in the picture', () => {
    const codeOf = (outcome: ReturnType<typeof read>) =>
      outcome.ok ? 'read' : outcome.problem.code;
    expect(codeOf(read({ ...plain, exposure: 1.4 }))).toBe('tones-burnt-out');
    const { picture, corners } = renderStrip(plain, seededRandom(1));
    const [a, b, c, d] = corners;
    expect(codeOf(tonesOnPhoto(8, picture, [a, a, a, a]))).toBe('tones-corners');
    expect(codeOf(tonesOnPhoto(8, picture, [[-0.4, b[1]], b, c, [-0.4, d[1]]]))).toBe(
      'tones-corners',
    );
    const near = ([x, y]: readonly [number, number]) =>
      [0.5 + (x - 0.5) / 12, 0.5 + (y - 0.5) / 12] as const;
    expect(codeOf(tonesOnPhoto(8, picture, [near(a), near(b), near(c), near(d)]))).toBe(
      'tones-too-small',
    );
    // A dark sheet of which the paper is missing is no lighter than itself.
    const bare = read({ ...plain, hasPaper: false, grain: 0.25 });
    expect(codeOf(bare)).toBe('tones-no-paper');
  });

  it('are the same whichever way round the signs were pointed at', () => {
    const { picture, corners } = renderStrip(plain, seededRandom(4));
    const [a, b, c, d] = corners;
    expect(tonesOnPhoto(8, picture, [a, d, c, b])).toEqual(tonesOnPhoto(8, picture, corners));
  });
});
