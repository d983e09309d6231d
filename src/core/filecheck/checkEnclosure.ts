import { boxAround, grown, liesWithin, type Box } from '../path/box.ts';
import { isClosed } from '../path/polyline.ts';
import { fileSetting } from './fileSetting.ts';
import { fault, type Finding, type PathLine, type Toolpath } from './toolpath.ts';

/**
 * What lies inside must be cut before what lies around it: a freed part drops or tilts, and spoils what comes after
 * (common practice, no source). A line that is only scored frees nothing. By boxes, and only where the closed line
 * reaches beyond the later one on all sides. O(n) for each of the biggest closed lines.
 */
export const checkEnclosure = (
  toolpath: Toolpath,
  isMark: (line: PathLine) => boolean,
): readonly Finding[] => {
  const boxed = toolpath.lines.flatMap((line): readonly Boxed[] => {
    const box = boxAround([line.points]);
    return box === undefined ? [] : [{ line, box }];
  });
  const strongest = greatest(toolpath.lines.map((line) => strength(toolpath, line) ?? 0));
  const outsides = boxed
    .filter(({ line }) => isClosed(line.points) && !isMark(line))
    .filter(({ line }) => (strength(toolpath, line) ?? strongest) >= cutsFrom * strongest)
    .sort((a, b) => areaOf(b.box) - areaOf(a.box))
    .slice(0, mostOutsides);
  for (const outside of outsides) {
    const inside = boxed.find(
      ({ line, box }) => line.where > outside.line.where && wellWithin(box, outside.box),
    );
    if (inside === undefined) continue;
    return [
      fault('check-inside-after-outside', {
        outside: outside.line.where,
        inside: inside.line.where,
        ...(inside.line.cell === undefined ? {} : { cell: inside.line.cell.id }),
      }),
    ];
  }
  return [];
};

interface Boxed {
  readonly line: PathLine;
  readonly box: Box;
}

/** The biggest lines go round most: no file needs more of them looked at. */
const mostOutsides = 300;

const areaOf = (box: Box): number => (box.rightMm - box.leftMm) * (box.topMm - box.bottomMm);

/** Not by spreading into Math.max, which fails beyond some hundred thousand. */
const greatest = (values: readonly number[]): number =>
  values.reduce((most, value) => Math.max(most, value), 0);

/** A line with less than this share of the strongest line's energy is taken for a score. */
const cutsFrom = 0.3;

/** Line energy on whatever scale the file has; undefined where it says nothing. */
const strength = (toolpath: Toolpath, line: PathLine): number | undefined => {
  const told = fileSetting(toolpath, line);
  if (told === undefined) return undefined;
  return ((told.powerPct ?? line.modal?.s ?? 0) * told.passes) / told.speedMmPerS;
};

const least = 0.2;

const wellWithin = (inner: Box, outer: Box): boolean => liesWithin(inner, grown(outer, -least));
