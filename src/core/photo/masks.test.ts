import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../num/seededRandom.ts';
import { masksOf, thresholdOf } from './masks.ts';
import { planesOf } from './opponent.ts';

describe('the threshold between two kinds of values', () => {
  it('lies between them, however many there are of either', () => {
    const random = seededRandom(1);
    for (const share of [0.1, 0.5, 0.9]) {
      const values = Float32Array.from(
        { length: 4000 },
        (_, i) => (i < share * 4000 ? 1 : 3) + 0.2 * random.normal(),
      );
      expect(thresholdOf(values)).toBeGreaterThan(1.3);
      expect(thresholdOf(values)).toBeLessThan(2.7);
    }
  });
});

describe('ways to tell a card from what it lies on', () => {
  it('do not take light that falls off for a card', () => {
    // A blue ground, five times darker on the right, with a square of another hue and the same light.
    const [widthPx, heightPx] = [120, 90];
    const rgb = new Uint8Array(3 * widthPx * heightPx);
    const isCard = (x: number, y: number): boolean => x > 40 && x < 80 && y > 30 && y < 60;
    for (let k = 0; k < widthPx * heightPx; k += 1) {
      const [x, y] = [k % widthPx, Math.floor(k / widthPx)];
      const light = 255 * (1 - (0.55 * x) / widthPx);
      const colour = isCard(x, y) ? [0.9, 0.5, 0.3] : [0.3, 0.5, 0.9];
      colour.forEach((value, c) => (rgb[3 * k + c] = light * value));
    }
    const [rim] = masksOf(planesOf({ widthPx, heightPx, rgb }));
    const wrong = Array.from(rim ?? []).filter(
      (value, k) => (value === 1) !== isCard(k % widthPx, Math.floor(k / widthPx)),
    );
    expect(wrong.length).toBeLessThan(0.01 * widthPx * heightPx);
  });
});
