import { placeInitials } from '../bed/place.ts';
import { wordsBelow } from '../card/cardParts.ts';
import { cellLines } from '../card/cellLines.ts';
import { cellWords, hasCornerPower } from '../card/settingWords.ts';
import { boxAround, grown, liesWithin, type Box } from '../path/box.ts';
import { Wanted } from '../path/cover.ts';
import { isClosed, lengthMm, type Polyline } from '../path/polyline.ts';
import { fault, type Finding, type PathLine, type Toolpath } from './toolpath.ts';

/**
 * A card's file without the card: the words that are drawn below each cell are held against the setting that its layer
 * spells. Only where the file has marks as our cards have them.
 */
export const checkOwnWords = (toolpath: Toolpath): readonly Finding[] => {
  const marks = toolpath.lines.filter(({ spelt }) => spelt?.label === 'marks');
  if (marks.length === 0) return [];
  const strokes = marks.flatMap(({ points }) => {
    const box = boxAround([points]);
    return box === undefined ? [] : [{ points, box, lengthMm: lengthMm(points) }];
  });
  return toolpath.lines.flatMap((line, i) => {
    const { spelt } = line;
    if (spelt === undefined || !/^[A-Z]{1,2}$/.test(spelt.label) || !isClosed(line.points))
      return [];
    const ids = line.cell === undefined ? possibleIds(toolpath, spelt.label) : [line.cell.id];
    const isSaid = (how?: 'before'): boolean =>
      ids.some((id) => hasWords(strokes, line, cellLines(spelt.setting, id, how)));
    if (isSaid() || (hasCornerPower(spelt.setting) && isSaid('before'))) return [];
    const cell = line.cell?.id ?? `${spelt.label}, ${String(i + 1)}`;
    return [fault('check-words-differ', { cell, words: cellWords(spelt.setting) })];
  });
};

/** More cells no card holds. */
const mostCells = 120;

/** A drawing that names no cells: any number of the rung will do, or of a place on the bed. */
const possibleIds = ({ lines }: Toolpath, label: string): readonly string[] =>
  lines
    .filter(({ spelt }) => spelt?.label === label)
    .slice(0, mostCells)
    .flatMap((_, i) =>
      [label, ...Object.values(placeInitials)].map((of) => `${of}${String(i + 1)}`),
    );

interface Stroke {
  readonly points: Polyline;
  readonly box: Box;
  readonly lengthMm: number;
}

/** How far a stroke may be off, mm; how much of each must be there; and what may be there beside, mm. */
const tolerance = 0.1;
const strokeShare = 0.6;
const strokeTimes = 0.3;
const strangeMm = 0.4;

/** Every stroke of the words is there, and no more than that where the words stand, however the strokes were joined. */
const hasWords = (
  strokes: readonly Stroke[],
  line: PathLine,
  words: readonly string[],
): boolean => {
  const shape = boxAround([line.points]);
  if (shape === undefined) return false;
  const expected = wordsBelow(words, [(shape.leftMm + shape.rightMm) / 2, shape.bottomMm]);
  const area = boxAround(expected);
  if (area === undefined) return false;
  const there = strokes.filter(({ box }) => liesWithin(box, grown(area, tolerance)));
  const length = there.reduce((sum, stroke) => sum + stroke.lengthMm, 0);
  const wantedMm = expected.reduce((sum, stroke) => sum + lengthMm(stroke), 0);
  if (Math.abs(length - wantedMm) > 0.02 * wantedMm + strangeMm) return false;
  const cover = new Wanted(expected, tolerance).cover(there.map(({ points }) => points));
  return (
    cover.strokes.every(({ share, times }) => share >= strokeShare && times >= strokeTimes) &&
    cover.lines.reduce((sum, { strayMm }) => sum + strayMm, 0) <= strangeMm
  );
};
