import type { Polyline } from './polyline.ts';

/** Lines without their exact copies. */
export interface DrawnOnce {
  /** Indices of the first of each, rising. */
  readonly first: readonly number[];
  /** By line the first one that runs through the same points, itself where it is the first. */
  readonly sameAs: Int32Array;
}

/** What a file rounds away. */
const roundMm = 1e-4;

/**
 * Finds lines that run through the very points of an earlier one, forwards or backwards: what was pasted twice, or five
 * thousand times. O(points).
 */
export const drawnOnce = (lines: readonly Polyline[]): DrawnOnce => {
  const sameAs = new Int32Array(lines.length);
  const first: number[] = [];
  const byHash = new Map<number, number[]>();
  lines.forEach((line, i) => {
    const hash = hashOf(line);
    const alike = byHash.get(hash);
    const known = alike?.find((j) => isSame(line, lines[j] ?? []));
    sameAs[i] = known ?? i;
    if (known !== undefined) return;
    first.push(i);
    if (alike === undefined) byHash.set(hash, [i]);
    else alike.push(i);
  });
  return { first, sameAs };
};

const rounded = (mm: number): number => Math.round(mm / roundMm);

/** The same for a line and its reverse: points are summed, each mixed well enough that sums differ. */
const hashOf = (line: Polyline): number => {
  let sum = line.length;
  for (const [x, y] of line) {
    let mixed = Math.imul(rounded(x), 0x9e3779b1) ^ Math.imul(rounded(y), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x2c1b3c6d);
    sum = (sum + (mixed ^ (mixed >>> 13))) | 0;
  }
  return sum;
};

const isSame = (a: Polyline, b: Polyline): boolean => {
  if (a.length !== b.length) return false;
  const last = a.length - 1;
  const along = (turned: boolean): boolean =>
    a.every(([x, y], k) => {
      const [bx, by] = b[turned ? last - k : k] ?? [NaN, NaN];
      return rounded(x) === rounded(bx) && rounded(y) === rounded(by);
    });
  return along(false) || along(true);
};
