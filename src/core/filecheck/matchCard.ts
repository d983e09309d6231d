import type { Card, Cell } from '../card/card.ts';
import { cardDrawing, type DrawnLayer, type DrawnPart } from '../card/cardDrawing.ts';
import { boxAround, grown, liesWithin, type Box } from '../path/box.ts';
import { distanceMm, type Point } from '../path/point.ts';
import { lengthMm, placed, type Polyline } from '../path/polyline.ts';
import type { PathLine, Toolpath } from './toolpath.ts';

/** Which lines of a file are which part of a card. */
export interface MatchedCard {
  /** How far the file lies from where the card has its zero. */
  readonly shiftMm: Point;
  readonly cells: readonly { readonly cell: Cell; readonly lines: readonly PathLine[] }[];
  /** Words of each cell: the strokes that are there, those that should be, and others in their place. */
  readonly words: readonly {
    readonly cell: Cell;
    readonly expected: number;
    readonly found: number;
    readonly strange: number;
  }[];
  readonly marks: readonly PathLine[];
  readonly window: readonly PathLine[];
  readonly outline: readonly PathLine[];
  /** Lines that the card does not have. */
  readonly strangers: readonly PathLine[];
}

/** How far a line may be off and still be the same, in mm. */
const tolerance = 0.1;

/**
 * Finds a card's parts in a file by where they lie; a file that was moved as a whole is moved back first, where more of the
 * card is in place so. Undefined where not one cell of the card is there. O(lines · parts).
 */
export const matchCard = (card: Card, toolpath: Toolpath): MatchedCard | undefined => {
  const drawing = cardDrawing(card);
  const candidates = [
    [0, 0] as Point,
    shiftBetween(
      toolpath.lines,
      drawing.layers.flatMap((l) => l.polylines),
    ),
  ];
  const matches = candidates.map((shift) => matchAt(card, toolpath, shift));
  const best = matches.reduce((a, b) => (inPlace(b) > inPlace(a) ? b : a));
  return cellsFound(best) === 0 ? undefined : best;
};

const cellsFound = ({ cells }: MatchedCard): number =>
  cells.filter(({ lines }) => lines.length > 0).length;

/**
 * How much lies where the card has it. Cells alone do not tell one shift from another: whatever lies within a cell's box
 * may be its line, and where a file was moved by a few millimetres the words of each cell lie there.
 */
const inPlace = (match: MatchedCard): number => {
  const { marks, words, window, outline } = match;
  const strange = words.reduce((sum, word) => sum + word.strange, 0);
  return cellsFound(match) + marks.length - strange + window.length + outline.length;
};

const shiftBetween = (lines: readonly PathLine[], drawn: readonly Polyline[]): Point => {
  const there = boxAround(lines.map(({ points }) => points));
  const here = boxAround(drawn);
  return there === undefined || here === undefined
    ? [0, 0]
    : [here.leftMm - there.leftMm, here.bottomMm - there.bottomMm];
};

const matchAt = (card: Card, toolpath: Toolpath, shift: Point): MatchedCard => {
  const pool = poolOf(toolpath.lines, shift);
  const layers = cardDrawing(card).layers;
  const partsOf = (kind: DrawnLayer['kind']): readonly DrawnPart[] =>
    layers.filter((layer) => layer.kind === kind).flatMap(({ parts }) => parts);
  const found = (parts: readonly DrawnPart[]): readonly PathLine[] =>
    parts.flatMap(({ polylines }) => polylines.flatMap((stroke) => pool.take(sameAs(stroke))));

  const outline = found(partsOf('outline'));
  const window = found(partsOf('window'));
  const isWords = ({ of }: DrawnPart): boolean => of.what === 'words';
  const otherMarks = found(partsOf('marks').filter((part) => !isWords(part)));
  const written = partsOf('marks')
    .filter(isWords)
    .map((part) => ({ part, strokes: part.polylines.map((stroke) => pool.take(sameAs(stroke))) }));
  const cells = partsOf('rung').flatMap((part) => {
    const cell = cellOf(card, part);
    const area = boxAround(part.polylines);
    if (cell === undefined || area === undefined) return [];
    return [{ cell, lines: pool.take(({ box }) => liesWithin(box, grown(area, tolerance))) }];
  });
  // Only when everything that belongs somewhere is taken: what is left where words should be are other words.
  const words = written.flatMap(({ part, strokes }) => {
    const cell = cellOf(card, part);
    const area = boxAround(part.polylines);
    if (cell === undefined || area === undefined) return [];
    const strange = pool.take(({ box }) => liesWithin(box, grown(area, wordsReach)));
    return [{ cell, strokes, strange }];
  });
  return {
    shiftMm: shift,
    cells,
    words: words.map(({ cell, strokes, strange }) => ({
      cell,
      expected: strokes.length,
      found: strokes.filter((lines) => lines.length > 0).length,
      strange: strange.length,
    })),
    marks: [
      ...otherMarks,
      ...words.flatMap(({ strokes, strange }) => [...strokes.flat(), ...strange]),
    ],
    window,
    outline,
    strangers: pool.rest(),
  };
};

const cellOf = (card: Card, { of }: DrawnPart): Cell | undefined =>
  'cell' in of ? card.cells.find(({ id }) => id === of.cell) : undefined;

/** How much wider than the right words wrong ones may be and still be taken for words of that cell. */
const wordsReach = 3;

interface Candidate {
  readonly line: PathLine;
  readonly points: Polyline;
  readonly box: Box;
  readonly lengthMm: number;
}

/** Lines not yet found to be part of anything. */
const poolOf = (lines: readonly PathLine[], shift: Point) => {
  const left = new Set(
    lines.flatMap((line): readonly Candidate[] => {
      const points = placed(line.points, shift);
      const box = boxAround([points]);
      return box === undefined ? [] : [{ line, points, box, lengthMm: lengthMm(points) }];
    }),
  );
  return {
    take: (belongs: (candidate: Candidate) => boolean): readonly PathLine[] => {
      const taken = [...left].filter(belongs);
      for (const candidate of taken) left.delete(candidate);
      return taken.map(({ line }) => line);
    },
    rest: (): readonly PathLine[] => [...left].map(({ line }) => line),
  };
};

/** The same line, drawn from either end, or a closed one from any corner: box, length and open ends agree. */
const sameAs = (wanted: Polyline): ((candidate: Candidate) => boolean) => {
  const box = boxAround([wanted]);
  const [start, end] = [wanted[0], wanted.at(-1)];
  if (box === undefined || start === undefined || end === undefined) return () => false;
  const length = lengthMm(wanted);
  const loops = distanceMm(start, end) < tolerance;
  return (candidate) => {
    if (Math.abs(candidate.lengthMm - length) > 0.02 * length + tolerance) return false;
    if (!liesWithin(candidate.box, grown(box, tolerance))) return false;
    if (!liesWithin(box, grown(candidate.box, tolerance))) return false;
    const [from, to] = [candidate.points[0], candidate.points.at(-1)];
    if (from === undefined || to === undefined) return false;
    const near = (a: Point, b: Point): boolean => distanceMm(a, b) < tolerance;
    if (loops) return near(from, to);
    return (near(from, start) && near(to, end)) || (near(from, end) && near(to, start));
  };
};
