import type { Box } from './box.ts';
import type { SegmentCells } from './segmentCells.ts';

/** Lines in pieces of a few neighbouring segments, each with its box. */
export interface Pieces {
  readonly count: number;
  /** By piece its first segment; one more at the end. */
  readonly first: Int32Array;
  /** By piece left, bottom, right, top. */
  readonly boxes: Float64Array;
}

/** Segments of a piece at most: two pieces are compared segment by segment. */
const mostSegments = 48;

/** Parts lines into pieces. A piece belongs to one line. O(segments). */
export const piecesOf = ({ count, ends, owner }: SegmentCells): Pieces => {
  const first: number[] = [];
  for (let i = 0; i < count; i += 1) {
    const begun = first.at(-1);
    if (begun === undefined || i - begun >= mostSegments || owner[i] !== owner[begun])
      first.push(i);
  }
  const boxes = new Float64Array(4 * first.length);
  first.forEach((begun, p) => {
    const box = boxOf(ends, begun, first[p + 1] ?? count);
    boxes.set([box.leftMm, box.bottomMm, box.rightMm, box.topMm], 4 * p);
  });
  return { count: first.length, first: Int32Array.from([...first, count]), boxes };
};

const boxOf = (ends: Float64Array, from: number, to: number): Box => {
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let k = 4 * from; k < 4 * to; k += 2) {
    const [x, y] = [ends[k] ?? NaN, ends[k + 1] ?? NaN];
    left = Math.min(left, x);
    right = Math.max(right, x);
    bottom = Math.min(bottom, y);
    top = Math.max(top, y);
  }
  return { leftMm: left, bottomMm: bottom, rightMm: right, topMm: top };
};

/**
 * Calls once for every pair of pieces (p, q), q < p, that have segments in cells within `reachMm` of one another. Near
 * linear in the number of segments, unless very many pieces crowd in one cell. Ends where `look` says `false`.
 */
export const eachNearPiece = (
  grid: SegmentCells,
  { count, first }: Pieces,
  reachMm: number,
  look: (p: number, q: number) => boolean,
): void => {
  /** The pieces already met in each cell, as chains: by cell the last one, and behind it the one before. */
  const lastIn = new Int32Array(grid.cells).fill(-1);
  const pieceAt: number[] = [];
  const before: number[] = [];
  const lookedAt = new Int32Array(grid.cells).fill(-1);
  const met = new Int32Array(count).fill(-1);
  let end = count;
  for (let p = 0; p < end; p += 1) {
    const [from, to] = [first[p] ?? NaN, first[p + 1] ?? NaN];
    for (let i = from; i < to; i += 1) {
      grid.eachCell(i, reachMm, (cell) => {
        if (lookedAt[cell] === p || end === 0) return;
        lookedAt[cell] = p;
        for (let at = lastIn[cell] ?? -1; at >= 0; at = before[at] ?? -1) {
          const q = pieceAt[at] ?? NaN;
          if (met[q] === p) continue;
          met[q] = p;
          if (look(p, q)) continue;
          end = 0;
          return;
        }
      });
    }
    for (let i = from; i < to; i += 1) {
      grid.eachCell(i, 0, (cell) => {
        const last = lastIn[cell] ?? -1;
        if (last >= 0 && pieceAt[last] === p) return;
        before.push(last);
        lastIn[cell] = pieceAt.push(p) - 1;
      });
    }
  }
};
