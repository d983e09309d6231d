import { boxAround } from './box.ts';
import type { Polyline } from './polyline.ts';

/** All segments of some lines, in flat arrays, and a grid of cells that tells which lie near one another. */
export interface SegmentGrid {
  readonly count: number;
  /** x0, y0, x1, y1 of each segment. */
  readonly ends: Float64Array;
  /** Which line each segment belongs to. */
  readonly owner: Int32Array;
  /** Calls once or more for every pair (i, j), j < i, whose boxes come within `reachMm` of one another. */
  readonly eachPair: (reachMm: number, look: (i: number, j: number) => void) => void;
}

/** Cells at most: memory is bounded whatever the sheet. */
const mostCells = 1_000_000;

/**
 * Sorts segments into cells of about `cellMm`. A long segment stands in all the cells that it passes. Near linear in the
 * number of segments plus length over cell, unless very many crowd in one cell.
 */
export const segmentGrid = (lines: readonly Polyline[], cellMm: number): SegmentGrid => {
  const count = lines.reduce((sum, line) => sum + Math.max(0, line.length - 1), 0);
  const ends = new Float64Array(4 * count);
  const owner = new Int32Array(count);
  let next = 0;
  lines.forEach((line, which) => {
    for (let k = 1; k < line.length; k += 1) {
      const [from, to] = [line[k - 1], line[k]];
      if (from === undefined || to === undefined) continue;
      ends.set([from[0], from[1], to[0], to[1]], 4 * next);
      owner[next] = which;
      next += 1;
    }
  });
  const box = boxAround(lines) ?? { leftMm: 0, bottomMm: 0, rightMm: 0, topMm: 0 };
  const [width, height] = [box.rightMm - box.leftMm, box.topMm - box.bottomMm];
  const cell = Math.max(cellMm, Math.sqrt((width * height) / mostCells), (width + height) / 1e5);
  const columns = Math.floor(width / cell) + 1;
  const rows = Math.floor(height / cell) + 1;
  const within = (value: number, most: number): number => Math.min(most - 1, Math.max(0, value));
  const columnOf = (x: number): number => within(Math.floor((x - box.leftMm) / cell), columns);
  const rowOf = (y: number): number => within(Math.floor((y - box.bottomMm) / cell), rows);

  /** Calls for the cells about a segment, piece by piece, so that a long one does not take its whole box. */
  const eachCell = (i: number, reachMm: number, look: (cellIndex: number) => void): void => {
    const [x0, y0] = [ends[4 * i] ?? 0, ends[4 * i + 1] ?? 0];
    const [x1, y1] = [ends[4 * i + 2] ?? 0, ends[4 * i + 3] ?? 0];
    const pieces = Math.max(1, Math.ceil(Math.max(Math.abs(x1 - x0), Math.abs(y1 - y0)) / cell));
    let [lastLeft, lastRight, lastLow, lastHigh] = [1, 0, 1, 0];
    for (let k = 0; k < pieces; k += 1) {
      const [ax, bx] = [x0 + ((x1 - x0) * k) / pieces, x0 + ((x1 - x0) * (k + 1)) / pieces];
      const [ay, by] = [y0 + ((y1 - y0) * k) / pieces, y0 + ((y1 - y0) * (k + 1)) / pieces];
      const [left, right] = [
        columnOf(Math.min(ax, bx) - reachMm),
        columnOf(Math.max(ax, bx) + reachMm),
      ];
      const [low, high] = [rowOf(Math.min(ay, by) - reachMm), rowOf(Math.max(ay, by) + reachMm)];
      for (let row = low; row <= high; row += 1) {
        for (let column = left; column <= right; column += 1) {
          const seen =
            row >= lastLow && row <= lastHigh && column >= lastLeft && column <= lastRight;
          if (!seen) look(row * columns + column);
        }
      }
      [lastLeft, lastRight, lastLow, lastHigh] = [left, right, low, high];
    }
  };

  const starts = new Uint32Array(columns * rows + 1);
  for (let i = 0; i < count; i += 1) {
    eachCell(i, 0, (at) => (starts[at + 1] = (starts[at + 1] ?? 0) + 1));
  }
  for (let at = 0; at < columns * rows; at += 1)
    starts[at + 1] = (starts[at + 1] ?? 0) + (starts[at] ?? 0);
  const filled = starts.slice();
  const members = new Uint32Array(starts.at(-1) ?? 0);
  for (let i = 0; i < count; i += 1) {
    eachCell(i, 0, (at) => {
      members[filled[at] ?? 0] = i;
      filled[at] = (filled[at] ?? 0) + 1;
    });
  }
  return {
    count,
    ends,
    owner,
    eachPair: (reachMm, look) => {
      for (let i = 0; i < count; i += 1) {
        const [x0, y0] = [ends[4 * i] ?? 0, ends[4 * i + 1] ?? 0];
        const [x1, y1] = [ends[4 * i + 2] ?? 0, ends[4 * i + 3] ?? 0];
        const [left, right] = [Math.min(x0, x1) - reachMm, Math.max(x0, x1) + reachMm];
        const [low, high] = [Math.min(y0, y1) - reachMm, Math.max(y0, y1) + reachMm];
        eachCell(i, reachMm, (at) => {
          for (let k = starts[at] ?? 0; k < (starts[at + 1] ?? 0); k += 1) {
            const j = members[k] ?? 0;
            if (j >= i) break;
            const [a, b] = [ends[4 * j] ?? 0, ends[4 * j + 2] ?? 0];
            if ((a < left && b < left) || (a > right && b > right)) continue;
            const [c, d] = [ends[4 * j + 1] ?? 0, ends[4 * j + 3] ?? 0];
            if ((c < low && d < low) || (c > high && d > high)) continue;
            look(i, j);
          }
        });
      }
    },
  };
};
