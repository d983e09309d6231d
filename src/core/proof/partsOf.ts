import { joinLines, type JoinedLine } from '../path/joinedLines.ts';
import { nestingOf, type Nested } from '../path/nesting.ts';
import type { Polyline } from '../path/polyline.ts';

/** A piece that falls out: an outline with its holes. */
export interface Part {
  /** Indices into the drawing's outlines: the outer one first. */
  readonly outlines: readonly number[];
  /** Indices of the lines that are cut for it. */
  readonly lines: readonly number[];
  readonly cutMm: number;
}

/** A drawing as the pieces that it is to give. */
export interface DrawingInParts {
  readonly parts: readonly Part[];
  /** All closed outlines, each drawn in one go or in pieces, and how they lie in one another. */
  readonly outlines: readonly (JoinedLine & { readonly nested: Nested })[];
  /** Runs that do not close: they free nothing. */
  readonly open: readonly JoinedLine[];
}

/**
 * Groups a drawing's lines into parts by nesting: what lies in an even number of outlines is an outer one, what lies in
 * an odd number is a hole of the one around it; an island in a hole is a part of its own. An outline drawn twice is one.
 * 20 000 outlines take some tenths of a second.
 */
export const partsOf = (lines: readonly Polyline[]): DrawingInParts => {
  const runs = joinLines(lines);
  const closed = runs.filter((run) => run.closed);
  const nested = nestingOf(closed.map(({ points }) => points));
  const outlines = closed.flatMap((run, i) => {
    const own = nested[i];
    return own === undefined ? [] : [{ ...run, nested: own }];
  });
  const members = new Map<number, number[]>();
  outlines.forEach(({ nested: { within, depth, copyOf } }, i) => {
    if (copyOf === undefined && depth % 2 === 0) members.set(i, [i, ...(members.get(i) ?? [])]);
    if (copyOf !== undefined || depth % 2 === 0 || within === undefined) return;
    const around = members.get(within);
    if (around === undefined) members.set(within, [i]);
    else around.push(i);
  });
  const parts = [...members.values()].map((of): Part => ({
    outlines: of,
    lines: of.flatMap((i) => outlines[i]?.lines ?? []),
    cutMm: of.reduce((sum, i) => sum + (outlines[i]?.lengthMm ?? NaN), 0),
  }));
  return { parts, outlines, open: runs.filter((run) => !run.closed) };
};
