import { describe, expect, it } from 'vitest';
import { homographyThrough, project } from '../../num/homography.ts';
import { flatCard } from './flatCard.ts';

/** A picture whose red rises by one a pixel to the right and whose green by one a pixel downwards. */
const ramp = (() => {
  const [widthPx, heightPx] = [250, 200];
  const rgb = new Uint8Array(widthPx * heightPx * 3);
  for (let y = 0; y < heightPx; y += 1)
    for (let x = 0; x < widthPx; x += 1) {
      rgb[3 * (y * widthPx + x)] = x;
      rgb[3 * (y * widthPx + x) + 1] = y;
    }
  return { widthPx, heightPx, rgb };
})();
const card = { widthMm: 60, heightMm: 40 };

describe('a card laid flat', () => {
  it('has at each place what the photograph shows there, however the card lies', () => {
    const corners = [
      { source: [0, 40], target: [40, 30] },
      { source: [60, 40], target: [220, 50] },
      { source: [60, 0], target: [200, 170] },
      { source: [0, 0], target: [20, 140] },
    ] as const;
    const through = homographyThrough(corners);
    if (!through.ok) throw new Error(through.reason);
    const flat = flatCard({ picture: ramp, toPx: through.matrix }, card, 120);
    expect([flat.widthPx, flat.heightPx]).toEqual([120, 80]);
    for (const [column, row] of [
      [0, 0],
      [60, 40],
      [119, 79],
      [13, 71],
    ] as const) {
      const at = [(column + 0.5) / 2, 40 - (row + 0.5) / 2] as const;
      const [x, y] = project(through.matrix, at);
      const k = 3 * (row * 120 + column);
      expect(Math.abs((flat.rgb[k] ?? NaN) - (x - 0.5))).toBeLessThan(0.6);
      expect(Math.abs((flat.rgb[k + 1] ?? NaN) - (y - 0.5))).toBeLessThan(0.6);
    }
  });

  it('is grey where the photograph does not show it', () => {
    const outside = [
      [1, 0, 500],
      [0, 1, 0],
      [0, 0, 1],
    ] as const;
    expect(new Set(flatCard({ picture: ramp, toPx: outside }, card, 60).rgb)).toEqual(
      new Set([128]),
    );
  });
});
