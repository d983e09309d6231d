import { labFromXyz, srgbExact, type Triple } from '../../num/colour.ts';
import { project, type Homography } from '../../num/homography.ts';
import type { Box } from '../path/box.ts';
import { lightOn, luminanceOf, type LightOn } from '../photo/linearLight.ts';
import type { Picture } from '../photo/picture.ts';
import type { Quad } from '../photo/quads.ts';
import { done, refused, type Outcome } from '../problem.ts';
import { shadesLaid } from './markStrip.ts';
import { placeShades } from './placeShades.ts';

/** How light one step of a strip is on a photograph. */
export interface ToneSeen {
  /** CIE L*. */
  readonly lightness: number;
  /** Its standard uncertainty. */
  readonly standardL: number;
}

/** White office paper: L* and its standard uncertainty. Source: ISO 12647-2, white of print substrates (from memory). */
const paper = { lightness: 94, standardL: 1.5 } as const;
/** What a camera makes of the tones between white and black is its own business. By judgement, no source. */
const cameraL = 2;
/** Fewer pixels a mm do not part a band from the bare sheet beside it. */
const leastPxPerMm = 2.5;
/** Paper whose light spreads more within a patch of a few mm has something on it, or is none; as a share of it. */
const unevenPaper = 0.12;
/** A bare sheet is hardly lighter than white paper. */
const lighterThanPaper = 1.15;
/** The share of the paper that may be burnt out to pure white. */
const burntOut = 0.02;
const pureWhite = 0.985;

/** Of each band so much is left out: at its ends, where the head has not its speed yet, and along its long sides, mm. */
const endMm = 15;
const sideMm = 1;
/** Paper is looked at from so far beside the shades on, over so much, mm: beyond the signs. */
const paperFromMm = 5;
const paperWideMm = 7;
const paperBeyondMm = 1;
/** Samples lie so far apart; the bare sheet is looked at so far above and below a band, mm. */
const sampleMm = 0.3;
const bareMm = 1.5;
/** A band is looked at in so many pieces, whose spread tells of the grain. */
const pieces = 6;

/**
 * How light each step of a strip of shades is, by a photograph with white paper on both sides of them: how much light there is, and
 * of which colour, is taken from the paper at the same height. `corners`: where a person sees the four signs about the shades, as
 * shares of width and height, from the upper left one on; each need only be near.
 * Refuses: `tones-corners`; `tones-too-small`; `tones-no-paper`; `tones-burnt-out`. O(bands · samples).
 */
export const tonesOnPhoto = (
  steps: number,
  picture: Picture,
  corners: Quad,
): Outcome<readonly ToneSeen[]> => {
  const laid = shadesLaid(steps);
  const toPx = placeShades(laid, picture, corners);
  if (toPx === undefined) return refused('tones-corners');
  const light = lightOn(picture, toPx);
  const seen: ToneSeen[] = [];
  for (const band of laid.bands) {
    if (pxPerMmOf(toPx, band) < leastPxPerMm) return refused('tones-too-small', { leastPxPerMm });
    const left = paperBeside(band, -paperFromMm - paperWideMm, light);
    const right = paperBeside(band, band.rightMm + paperFromMm, light);
    const shades = piecesOf(band).map((piece) => lightIn(piece, light));
    const bare = lightIn(
      { ...insideOf(band), bottomMm: band.topMm + bareMm / 2, topMm: band.topMm + bareMm },
      light,
    );
    if (left === undefined || right === undefined || bare === undefined)
      return refused('tones-corners');
    if (Math.max(left.burntOut, right.burntOut) > burntOut) return refused('tones-burnt-out');
    const over = (one: Lit): number => shareOfPaper(one, left, right);
    if (Math.max(left.uneven, right.uneven) > unevenPaper || over(bare) > lighterThanPaper)
      return refused('tones-no-paper');
    const tones = shades.flatMap((shade) => (shade === undefined ? [] : lightnessOf(over(shade))));
    if (tones.length < pieces) return refused('tones-corners');
    seen.push(toneOf(tones));
  }
  return done(seen);
};

const toneOf = (tones: readonly number[]): ToneSeen => {
  const lightness = tones.reduce((sum, tone) => sum + tone, 0) / tones.length;
  const squares = tones.reduce((sum, tone) => sum + (tone - lightness) ** 2, 0);
  const ofMean = Math.sqrt(squares / (tones.length * (tones.length - 1)));
  return { lightness, standardL: Math.hypot(ofMean, paper.standardL, cameraL) };
};

/** CIE L* of a share of the light that paper sends back. */
const lightnessOf = (share: number): number => {
  const y = share * ((paper.lightness + 16) / 116) ** 3;
  const { white } = srgbExact;
  return labFromXyz([y * white[0], y * white[1], y * white[2]], white)[0];
};

/** Light of a patch: its mean, linear; where its middle is; how far it spreads, as a share; how much of it is pure white. */
interface Lit {
  readonly mean: Triple;
  readonly xMm: number;
  readonly uneven: number;
  readonly burntOut: number;
}

/** Undefined where some of it is not on the photograph. */
const lightIn = ({ leftMm, rightMm, bottomMm, topMm }: Box, light: LightOn): Lit | undefined => {
  const across = Math.max(2, Math.round((rightMm - leftMm) / sampleMm));
  const up = Math.max(2, Math.round((topMm - bottomMm) / sampleMm));
  let [red, green, blue, sum, squares, white] = [0, 0, 0, 0, 0, 0];
  for (let i = 0; i < across; i += 1) {
    for (let j = 0; j < up; j += 1) {
      const at = light(
        leftMm + ((i + 0.5) / across) * (rightMm - leftMm),
        bottomMm + ((j + 0.5) / up) * (topMm - bottomMm),
      );
      if (at === undefined) return undefined;
      red += at[0];
      green += at[1];
      blue += at[2];
      const y = luminanceOf(at);
      sum += y;
      squares += y * y;
      if (Math.max(...at) > pureWhite) white += 1;
    }
  }
  const count = across * up;
  const mean = sum / count;
  return {
    mean: [red / count, green / count, blue / count],
    xMm: (leftMm + rightMm) / 2,
    uneven: Math.sqrt(Math.max(0, squares / count - mean ** 2)) / mean,
    burntOut: white / count,
  };
};

const paperBeside = ({ bottomMm, topMm }: Box, leftMm: number, light: LightOn): Lit | undefined =>
  lightIn(
    {
      leftMm,
      rightMm: leftMm + paperWideMm,
      bottomMm: bottomMm - paperBeyondMm,
      topMm: topMm + paperBeyondMm,
    },
    light,
  );

/** The luminance of a patch where paper in its place would be 1, its light being between that of the paper on either side. */
const shareOfPaper = ({ mean, xMm }: Lit, left: Lit, right: Lit): number => {
  const along = (xMm - left.xMm) / (right.xMm - left.xMm);
  const share = (k: 0 | 1 | 2): number =>
    mean[k] / (left.mean[k] + along * (right.mean[k] - left.mean[k]));
  return luminanceOf([share(0), share(1), share(2)]);
};

const insideOf = ({ leftMm, rightMm, bottomMm, topMm }: Box): Box => ({
  leftMm: leftMm + endMm,
  rightMm: rightMm - endMm,
  bottomMm: bottomMm + sideMm,
  topMm: topMm - sideMm,
});

const piecesOf = (band: Box): readonly Box[] => {
  const { leftMm, rightMm, ...high } = insideOf(band);
  const wide = (rightMm - leftMm) / pieces;
  return Array.from({ length: pieces }, (_, i) => ({
    ...high,
    leftMm: leftMm + i * wide,
    rightMm: leftMm + (i + 1) * wide,
  }));
};

const pxPerMmOf = (toPx: Homography, { leftMm, rightMm, bottomMm, topMm }: Box): number => {
  const [x, y] = [(leftMm + rightMm) / 2, (bottomMm + topMm) / 2];
  const [at, right, up] = [
    project(toPx, [x, y]),
    project(toPx, [x + 1, y]),
    project(toPx, [x, y + 1]),
  ];
  return Math.min(
    Math.hypot(right[0] - at[0], right[1] - at[1]),
    Math.hypot(up[0] - at[0], up[1] - at[1]),
  );
};
