import { cholesky, choleskySolve } from '../../num/cholesky.ts';
import type { Planes } from './opponent.ts';

/** A set of pixels: 1 where it holds. */
export type Mask = Uint8Array;

/**
 * Ways to tell a card from what it lies on: by each colour, lighter or darker than the best threshold between two (Otsu's),
 * and by how far it is from what the picture's rim looks like, which is followed smoothly under the card.
 */
export const masksOf = (planes: Planes): readonly Mask[] => {
  const count = planes.widthPx * planes.heightPx;
  const rim = fromRim(planes);
  return [
    ...[rim, ...planes.channels].flatMap((plane, k) => {
      const over = thresholdOf(plane);
      const above = new Uint8Array(count);
      for (let i = 0; i < count; i += 1) above[i] = (plane[i] ?? NaN) > over ? 1 : 0;
      return k === 0 ? [above] : [above, above.map((value) => 1 - value)];
    }),
  ];
};

/** Otsu's threshold: what parts the values into two that are each most alike. */
export const thresholdOf = (plane: Float32Array): number => {
  const [low, high] = rangeOf(plane);
  const bins = new Float64Array(128);
  for (const value of plane) {
    const bin = Math.min(127, Math.max(0, Math.floor((128 * (value - low)) / (high - low || 1))));
    bins[bin] = (bins[bin] ?? NaN) + 1;
  }
  const total = plane.length;
  const sum = bins.reduce((all, n, i) => all + n * i, 0);
  let [below, sumBelow, best, at] = [0, 0, -1, 64];
  bins.forEach((n, i) => {
    below += n;
    sumBelow += n * i;
    if (below === 0 || below === total) return;
    const apart = sumBelow / below - (sum - sumBelow) / (total - below);
    const between = below * (total - below) * apart ** 2;
    if (between > best) [best, at] = [between, i + 1];
  });
  return low + (at / 128) * (high - low);
};

/** Without the outermost hundredth at either end. */
const rangeOf = (plane: Float32Array): readonly [number, number] => {
  const some = Float32Array.from(
    { length: Math.min(plane.length, 4000) },
    (_, i) => plane[Math.floor((i * plane.length) / Math.min(plane.length, 4000))] ?? NaN,
  ).sort();
  return [
    some[Math.floor(some.length * 0.01)] ?? NaN,
    some[Math.ceil(some.length * 0.99) - 1] ?? NaN,
  ];
};

/** What share of the picture's sides counts as its rim. */
const rimShare = 0.07;

/** How far each pixel is from the rim's colours, each followed inward as a surface of the second degree. */
const fromRim = ({ widthPx, heightPx, channels }: Planes): Float32Array => {
  const far = new Float32Array(widthPx * heightPx);
  const [rimX, rimY] = [widthPx * rimShare, heightPx * rimShare];
  const places: number[] = [];
  for (let y = 0; y < heightPx; y += 2)
    for (let x = 0; x < widthPx; x += 2)
      if (x < rimX || y < rimY || x >= widthPx - rimX || y >= heightPx - rimY)
        places.push(y * widthPx + x);
  for (const plane of channels) {
    const surface = surfaceThrough(plane, places, widthPx, heightPx);
    for (let y = 0; y < heightPx; y += 1)
      for (let x = 0; x < widthPx; x += 1) {
        const k = y * widthPx + x;
        far[k] = (far[k] ?? NaN) + ((plane[k] ?? NaN) - surface(x / widthPx, y / heightPx)) ** 2;
      }
  }
  return far.map(Math.sqrt);
};

const terms = (x: number, y: number): readonly number[] => [1, x, y, x * x, x * y, y * y];

/** Least squares with what lies far off counting less and less: a hand may lie on the rim. */
const surfaceThrough = (
  plane: Float32Array,
  places: readonly number[],
  widthPx: number,
  heightPx: number,
): ((x: number, y: number) => number) => {
  let weights = places.map(() => 1);
  let coefficients: readonly number[] = [0, 0, 0, 0, 0, 0];
  const at = (x: number, y: number): number =>
    terms(x, y).reduce((sum, term, k) => sum + term * (coefficients[k] ?? NaN), 0);
  for (let round = 0; round < 4; round += 1) {
    const normal = Float64Array.from({ length: 36 }, (_, i) => (i % 7 === 0 ? 1e-9 : 0));
    const right = new Float64Array(6);
    places.forEach((k, n) => {
      const row = terms((k % widthPx) / widthPx, Math.floor(k / widthPx) / heightPx);
      row.forEach((a, i) => {
        const weighted = a * (weights[n] ?? NaN);
        row.forEach((b, j) => (normal[6 * i + j] = (normal[6 * i + j] ?? NaN) + weighted * b));
        right[i] = (right[i] ?? NaN) + weighted * (plane[k] ?? NaN);
      });
    });
    const lower = cholesky(normal, 6);
    if (lower === null) break;
    coefficients = [...choleskySolve(lower, 6, right)];
    const off = places.map((k) =>
      Math.abs((plane[k] ?? NaN) - at((k % widthPx) / widthPx, Math.floor(k / widthPx) / heightPx)),
    );
    const usual = Math.max(0.01, [...off].sort((a, b) => a - b)[off.length >> 1] ?? NaN);
    weights = off.map((one) => 1 / (1 + (one / (2 * usual)) ** 2));
  }
  return at;
};
