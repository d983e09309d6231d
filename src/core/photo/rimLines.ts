import type { Point } from '../path/point.ts';

export interface Side {
  readonly from: Point;
  readonly to: Point;
}

const angles = 180;
const mostLines = 7;
/** A line that fewer of the rim's points lie on is none. */
const leastShare = 0.06;
const nearPx = 1.6;

/**
 * Straight lines that many points of a rim lie on, by Hough's vote, each taken out before the next is looked for; in turn
 * around the points' middle. Where a hand lies over a corner, the sides are still straight beside it.
 */
export const rimLines = (rim: readonly Point[]): readonly Side[] => {
  const middle: Point = [mean(rim.map(([x]) => x)), mean(rim.map(([, y]) => y))];
  const found: { readonly side: Side; readonly outward: number }[] = [];
  let left = rim;
  while (found.length < mostLines) {
    const best = mostVoted(left, middle);
    const on = left.filter((point) => offLine(point, middle, best) < nearPx);
    if (on.length < leastShare * rim.length) break;
    const side = sideThrough(on);
    const [mx, my] = [
      (side.from[0] + side.to[0]) / 2 - middle[0],
      (side.from[1] + side.to[1]) / 2 - middle[1],
    ];
    const [nx, ny] = [side.to[1] - side.from[1], side.from[0] - side.to[0]];
    const sign = mx * nx + my * ny < 0 ? -1 : 1;
    found.push({ side, outward: Math.atan2(sign * ny, sign * nx) });
    left = left.filter((point) => offLine(point, middle, best) >= 2 * nearPx);
  }
  return found.sort((a, b) => a.outward - b.outward).map(({ side }) => side);
};

interface Vote {
  readonly angle: number;
  readonly off: number;
}

const offLine = ([x, y]: Point, [mx, my]: Point, { angle, off }: Vote): number =>
  Math.abs((x - mx) * Math.cos(angle) + (y - my) * Math.sin(angle) - off);

const mostVoted = (points: readonly Point[], [mx, my]: Point): Vote => {
  const reach = Math.ceil(Math.max(1, ...points.map(([x, y]) => Math.hypot(x - mx, y - my))));
  const bins = 2 * reach + 2;
  const votes = new Uint16Array(angles * bins);
  let [most, at] = [0, 0];
  for (let a = 0; a < angles; a += 1) {
    const [cos, sin] = [Math.cos((a * Math.PI) / angles), Math.sin((a * Math.PI) / angles)];
    for (const [x, y] of points) {
      const k = a * bins + Math.round((x - mx) * cos + (y - my) * sin) + reach;
      votes[k] = (votes[k] ?? NaN) + 1;
    }
  }
  for (let k = 1; k + 1 < votes.length; k += 1) {
    const sum = (votes[k - 1] ?? 0) + 2 * (votes[k] ?? 0) + (votes[k + 1] ?? 0);
    if (sum > most) [most, at] = [sum, k];
  }
  return { angle: (Math.floor(at / bins) * Math.PI) / angles, off: (at % bins) - reach };
};

/** Along the direction in which the points are spread out most, from the first of them to the last. */
const sideThrough = (points: readonly Point[]): Side => {
  const [mx, my] = [mean(points.map(([x]) => x)), mean(points.map(([, y]) => y))];
  let [xx, xy, yy] = [0, 0, 0];
  for (const [x, y] of points) {
    xx += (x - mx) ** 2;
    xy += (x - mx) * (y - my);
    yy += (y - my) ** 2;
  }
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
  const along = points.map(([x, y]) => (x - mx) * ux + (y - my) * uy);
  const [low, high] = [Math.min(...along), Math.max(...along)];
  return { from: [mx + low * ux, my + low * uy], to: [mx + high * ux, my + high * uy] };
};

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
