import type { Point } from '../path/point.ts';
import { masksOf } from './masks.ts';
import { planesOf, smaller, type Planes } from './opponent.ts';
import type { Picture } from './picture.ts';
import { quadsIn, type Quad } from './quads.ts';
import { sharpenQuad } from './sharpenQuad.ts';

/** Pictures are looked over at about this size first. */
const smallPx = 400;
const mostQuads = 5;

/** A picture made ready, and the four-sided things in it, the likeliest first. */
export interface Looked {
  readonly planes: Planes;
  readonly quads: readonly Quad[];
}

/** Finds what may be a card: patches with four straight sides, sharpened in the picture itself (of about 2,000 pixels). */
export const lookForCards = (picture: Picture): Looked => {
  const planes = planesOf(picture);
  const shrink = Math.max(1, Math.round(Math.max(picture.widthPx, picture.heightPx) / smallPx));
  const small = smaller(planes, shrink);
  const seen = masksOf(small)
    .flatMap((mask) => quadsIn(mask, small))
    .filter(({ support }) => support > 0.5)
    .sort((a, b) => b.support - a.support);
  const apart: Quad[] = [];
  for (const { quad } of seen)
    if (apart.length < mostQuads && apart.every((other) => offBetween(other, quad) > 6))
      apart.push(quad);
  const [scaleX, scaleY] = [planes.widthPx / small.widthPx, planes.heightPx / small.heightPx];
  const larger = (quad: Quad): Quad => {
    const [a, b, c, d] = quad.map(([x, y]): Point => [x * scaleX, y * scaleY]);
    return a === undefined || b === undefined || c === undefined || d === undefined
      ? quad
      : [a, b, c, d];
  };
  const reach = Math.ceil(3.5 * scaleX);
  return {
    planes,
    quads: apart.map(larger).flatMap((quad) => {
      const sharp = sharpenQuad(planes, quad, reach);
      return sharp === null ? [quad] : [sharp, quad];
    }),
  };
};

/** A finger is about so far off, as a share of the picture's longer side. */
const tapOff = 0.02;

/** The card whose corners a person pointed at: its sides snap to the clear steps of colour beside the lines between them. */
export const lookAtCorners = (picture: Picture, [a, b, c, d]: Quad): Looked => {
  const planes = planesOf(picture);
  const at = ([x, y]: Point): Point => [x * picture.widthPx, y * picture.heightPx];
  const said: Quad = [at(a), at(b), at(c), at(d)];
  const reach = Math.ceil(tapOff * Math.max(picture.widthPx, picture.heightPx));
  const sharp = sharpenQuad(planes, said, reach);
  return { planes, quads: sharp === null ? [said] : [sharp, said] };
};

/** How far the corners of two quads are from each other, however they are counted. */
const offBetween = (a: Quad, b: Quad): number =>
  Math.max(...a.map(([x, y]) => Math.min(...b.map(([u, v]) => Math.hypot(x - u, y - v)))));
