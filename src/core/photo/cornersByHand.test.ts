import { describe, expect, it } from 'vitest';
import { inventCards } from '../../../bench/files/inventCards.ts';
import { takePhotos } from '../../../bench/photo/takePhotos.ts';
import { project } from '../../num/homography.ts';
import { readPhoto } from './readPhoto.ts';
import type { Picture } from './picture.ts';
import type { Quad } from './quads.ts';

const asShares = (
  { widthPx, heightPx }: Picture,
  corners: readonly (readonly number[])[],
): Quad => {
  const [a, b, c, d] = corners.map(([x = NaN, y = NaN]) => [x / widthPx, y / heightPx] as const);
  if (a === undefined || b === undefined || c === undefined || d === undefined)
    throw new Error('four corners');
  return [a, b, c, d];
};

describe('a card whose corners a person pointed at', () => {
  it('is read as where it is found by itself, from any corner on, either way round, by a finger that is off', async () => {
    const card = inventCards(8, 1).find(({ outline }) => outline === 'last');
    if (card === undefined) throw new Error('no card');
    const { front } = await takePhotos(card, 'fair', 20_002);
    const alone = readPhoto(card, { front });
    if (alone.toPx === undefined) throw new Error('not found');
    const { toPx } = alone;
    const { widthMm: w, heightMm: h } = card;
    const mm = [
      [0, h],
      [w, h],
      [w, 0],
      [0, 0],
    ] as const;
    const offPx = [
      [14, -9],
      [-11, 12],
      [8, 15],
      [-13, -10],
    ] as const;
    const tapped = mm.map((at, i) => {
      const [x, y] = project(toPx, at);
      return [x + (offPx[i]?.[0] ?? 0), y + (offPx[i]?.[1] ?? 0)];
    });
    const turned = [...tapped.slice(1), ...tapped.slice(0, 1)];
    for (const corners of [tapped, turned, turned.toReversed()]) {
      const read = readPhoto(card, { front, corners: asShares(front, corners) });
      expect(read.found).toBe(true);
      expect(read.cells.map(({ grade }) => grade)).toEqual(alone.cells.map(({ grade }) => grade));
      for (const at of mm) {
        const [[x, y], [u, v]] = [project(read.toPx ?? toPx, at), project(toPx, at)];
        expect(Math.hypot(x - u, y - v)).toBeLessThan(3);
      }
    }
  });

  it('is not found where four taps make no card', async () => {
    const [card] = inventCards(1, 1);
    if (card === undefined) throw new Error('no card');
    const { front } = await takePhotos(card, 'fair', 20_002);
    const onALine = asShares(front, [
      [100, 100],
      [200, 200],
      [300, 300],
      [400, 400],
    ]);
    expect(readPhoto(card, { front, corners: onALine }).found).toBe(false);
  });
});
