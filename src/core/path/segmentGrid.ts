import type { Polyline } from './polyline.ts';
import { segmentCells } from './segmentCells.ts';

/** All segments of some lines, in flat arrays, and a grid of cells that tells which lie near one another. */
export interface SegmentGrid {
  /** x0, y0, x1, y1 of each segment. */
  readonly ends: Float64Array;
  /** Which line each segment belongs to. */
  readonly owner: Int32Array;
  /**
   * Calls once or more for every pair (i, j), j < i, whose boxes come within `reachMm` of one another, all of one i after
   * another. Gives up, and says `false`, where that many crowd in the same cells that it would not end.
   */
  readonly eachPair: (reachMm: number, look: (i: number, j: number) => void) => boolean;
}

/** Segments met in cells at most, some seconds: beyond that a drawing is a heap of lines. */
const mostMet = 100_000_000;
/** One that is looked at costs about so many that are only met. */
const lookCost = 8;

/**
 * Sorts segments into cells of about `cellMm`. A long segment stands in all the cells that it passes. Near linear in the
 * number of segments plus length over cell, unless very many crowd in one cell.
 */
export const segmentGrid = (lines: readonly Polyline[], cellMm: number): SegmentGrid => {
  const { count, ends, owner, cells, eachCell } = segmentCells(lines, cellMm);
  const starts = new Uint32Array(cells + 1);
  for (let i = 0; i < count; i += 1) {
    eachCell(i, 0, (at) => (starts[at + 1] = (starts[at + 1] ?? NaN) + 1));
  }
  for (let at = 0; at < cells; at += 1)
    starts[at + 1] = (starts[at + 1] ?? NaN) + (starts[at] ?? NaN);
  const filled = starts.slice();
  const members = new Uint32Array(starts.at(-1) ?? 0);
  for (let i = 0; i < count; i += 1) {
    eachCell(i, 0, (at) => {
      members[filled[at] ?? NaN] = i;
      filled[at] = (filled[at] ?? NaN) + 1;
    });
  }
  return {
    ends,
    owner,
    eachPair: (reachMm, look) => {
      let met = 0;
      for (let i = 0; i < count; i += 1) {
        if (met > mostMet) return false;
        const [x0, y0] = [ends[4 * i] ?? NaN, ends[4 * i + 1] ?? NaN];
        const [x1, y1] = [ends[4 * i + 2] ?? NaN, ends[4 * i + 3] ?? NaN];
        const [left, right] = [Math.min(x0, x1) - reachMm, Math.max(x0, x1) + reachMm];
        const [low, high] = [Math.min(y0, y1) - reachMm, Math.max(y0, y1) + reachMm];
        eachCell(i, reachMm, (at) => {
          for (let k = starts[at] ?? NaN; k < (starts[at + 1] ?? NaN); k += 1) {
            met += 1;
            const j = members[k] ?? NaN;
            if (j >= i) break;
            const [a, b] = [ends[4 * j] ?? NaN, ends[4 * j + 2] ?? NaN];
            if ((a < left && b < left) || (a > right && b > right)) continue;
            const [c, d] = [ends[4 * j + 1] ?? NaN, ends[4 * j + 3] ?? NaN];
            if ((c < low && d < low) || (c > high && d > high)) continue;
            met += lookCost;
            look(i, j);
          }
        });
      }
      return true;
    },
  };
};
