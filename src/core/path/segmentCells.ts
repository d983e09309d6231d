import { boxAround } from './box.ts';
import type { Polyline } from './polyline.ts';

/** All segments of some lines, in flat arrays, and the cells of a grid that each passes. */
export interface SegmentCells {
  readonly count: number;
  /** x0, y0, x1, y1 of each segment. */
  readonly ends: Float64Array;
  /** Which line each segment belongs to; never falling. */
  readonly owner: Int32Array;
  readonly cells: number;
  /**
   * Calls once or more for every cell within reach of a segment, piece by piece, so that a long one does not take its
   * whole box.
   */
  readonly eachCell: (i: number, reachMm: number, look: (cell: number) => void) => void;
}

/** Cells at most: memory is bounded whatever the sheet. */
const mostCells = 1_000_000;

/** Lays a grid of cells of about `cellMm` over lines. O(segments). */
export const segmentCells = (lines: readonly Polyline[], cellMm: number): SegmentCells => {
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

  const eachCell = (i: number, reachMm: number, look: (cellIndex: number) => void): void => {
    const [x0, y0] = [ends[4 * i] ?? NaN, ends[4 * i + 1] ?? NaN];
    const [x1, y1] = [ends[4 * i + 2] ?? NaN, ends[4 * i + 3] ?? NaN];
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
  return { count, ends, owner, cells: columns * rows, eachCell };
};
