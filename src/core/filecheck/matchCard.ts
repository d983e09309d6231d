import type { Card, Cell, Rung } from '../card/card.ts';
import { cardDrawing, type CardDrawing, type DrawnLayer } from '../card/cardDrawing.ts';
import type { DrawnPart } from '../card/cardParts.ts';
import { hasCornerPower } from '../card/settingWords.ts';
import { boxAround, grown, liesWithin, type Box } from '../path/box.ts';
import { Wanted, type LineCover, type StrokeCover } from '../path/cover.ts';
import type { Point } from '../path/point.ts';
import { isClosed, lengthMm, placed, type Polyline } from '../path/polyline.ts';
import { joinLines } from './joinLines.ts';
import type { PathLine, Toolpath } from './toolpath.ts';

/** A line, or as much of it as goes along one part of a card. */
export interface Piece {
  readonly line: PathLine;
  readonly mm: number;
}

export interface MatchedCell {
  readonly cell: Cell;
  /** The longest first; none where the cell is not cut. */
  readonly pieces: readonly Piece[];
  /** Share of the outline that something goes along, 0–1. */
  readonly share: number;
  /** How often the outline is gone over by the lines that are drawn, whatever passes each of them has. */
  readonly times: number;
  /** Share of the outline that is gone over more or less often than that. */
  readonly unevenShare: number;
}

/** Which lines of a file are which part of a card. */
export interface MatchedCard {
  /** How far the file lies from where the card has its zero. */
  readonly shiftMm: Point;
  readonly cells: readonly MatchedCell[];
  /** Words of each cell: the strokes that are there, those that should be, and how much else is in their place. */
  readonly words: readonly {
    readonly cell: Cell;
    readonly expected: number;
    readonly found: number;
    readonly strangeMm: number;
  }[];
  readonly marks: readonly PathLine[];
  readonly window: readonly PathLine[];
  readonly outline: readonly PathLine[];
  /** Parts beside cells and words that the card has and the file has not. */
  readonly missing: readonly DrawnPart['of']['what'][];
  /** Lines that the card does not have. */
  readonly strangers: readonly PathLine[];
}

/** How far a line may be off and still be the same, in mm. */
const tolerance = 0.1;
/** Shorter than this nothing is cut that matters, mm: the ends of what was joined or cut up. */
const crumbMm = 0.3;
/** A stroke of which so much is there, and not only another beside it, is there. */
const isThere = ({ share, times }: StrokeCover): boolean => share >= 0.6 && times >= 0.3;
/** How much wider than the right words wrong ones may be and still be taken for words of that cell. */
const wordsReach = 3;

/**
 * Finds a card's parts in a file by what lines go along: exploded, joined, turned about or cut in another order they are
 * the same. A file that was moved as a whole is moved back first, and
 * one that was made when corner power had other words is as good. Undefined where not one cell of the card is there.
 * O(length).
 */
export const matchCard = (card: Card, toolpath: Toolpath): MatchedCard | undefined => {
  const now = matchDrawing(card, toolpath, cardDrawing(card));
  if (now === undefined || hasAllWords(now) || !card.rungs.some(hasCorners)) return now;
  const before = matchDrawing(card, toolpath, cardDrawing(card, 'before'));
  return before !== undefined && hasAllWords(before) ? before : now;
};

const hasCorners = ({ setting }: Rung): boolean => hasCornerPower(setting);

const hasAllWords = ({ words }: MatchedCard): boolean =>
  words.every(({ found, expected }) => found === expected);

const matchDrawing = (
  card: Card,
  toolpath: Toolpath,
  { layers }: CardDrawing,
): MatchedCard | undefined => {
  const parts = layers.flatMap((layer) => layer.parts.map((part) => ({ layer, part })));
  const strokes = parts.flatMap(({ part }, p) => part.polylines.map((points) => ({ p, points })));
  const wanted = new Wanted(
    strokes.map(({ points }) => points),
    tolerance,
  );
  const shiftMm = bestShift(toolpath, wanted, layers);
  const { strokes: covers, lines } = wanted.cover(
    toolpath.lines.map(({ points }) => placed(points, shiftMm)),
  );
  const onPart = parts.map((): Piece[] => []);
  const strays: { readonly line: PathLine; readonly cover: LineCover }[] = [];
  lines.forEach((cover, i) => {
    const line = toolpath.lines[i];
    if (line === undefined) return;
    const mmOn = new Map<number, number>();
    for (const [stroke, mm] of cover.onStroke) {
      const p = strokes[stroke]?.p ?? NaN;
      mmOn.set(p, (mmOn.get(p) ?? 0) + mm);
    }
    for (const [p, mm] of mmOn) onPart[p]?.push({ line, mm });
    if (cover.strayMm > crumbMm) strays.push({ line, cover });
  });

  const strokesOf = (p: number) => covers.filter((_, i) => strokes[i]?.p === p);
  const cells = parts.flatMap(({ layer, part }, p): readonly MatchedCell[] => {
    const cell = layer.kind === 'rung' ? cellOf(card, part) : undefined;
    const [cover] = strokesOf(p);
    if (cell === undefined || cover === undefined) return [];
    const { share, times, unevenShare } = cover;
    const pieces = share < 0.02 ? [] : weighty(onPart[p] ?? []);
    return [{ cell, pieces, share, times, unevenShare }];
  });
  if (cells.every(({ share }) => share < 0.5)) return undefined;

  const marks = new Set<PathLine>();
  const wordParts = parts.flatMap(({ part }, p) => {
    const cell = part.of.what === 'words' ? cellOf(card, part) : undefined;
    const area = boxAround(part.polylines);
    return cell === undefined || area === undefined ? [] : [{ cell, area, p, strangeMm: 0 }];
  });
  const strangers = strays.flatMap(({ line, cover }) => {
    const place = wordParts.find(({ area }) => isIn(cover.strayBox, grown(area, wordsReach)));
    if (place === undefined) return [line];
    place.strangeMm += cover.strayMm;
    marks.add(line);
    return [];
  });
  const ofKind = (kind: DrawnLayer['kind']): readonly PathLine[] => [
    ...new Set(
      parts.flatMap(({ layer }, p) =>
        layer.kind === kind ? weighty(onPart[p] ?? []).map(({ line }) => line) : [],
      ),
    ),
  ];
  for (const line of ofKind('marks')) marks.add(line);
  return {
    shiftMm,
    cells,
    words: wordParts.map(({ cell, p, strangeMm }) => ({
      cell,
      expected: strokesOf(p).length,
      found: strokesOf(p).filter(isThere).length,
      strangeMm,
    })),
    marks: [...marks],
    window: ofKind('window'),
    outline: ofKind('outline'),
    missing: [
      ...new Set(
        parts
          .filter(
            ({ layer, part }, p) =>
              layer.kind !== 'rung' && part.of.what !== 'words' && !strokesOf(p).every(isThere),
          )
          .map(({ part }) => part.of.what),
      ),
    ],
    strangers,
  };
};

const cellOf = (card: Card, { of }: DrawnPart): Cell | undefined =>
  'cell' in of ? card.cells.find(({ id }) => id === of.cell) : undefined;

const isIn = (box: Box | undefined, area: Box): boolean =>
  box !== undefined && liesWithin(box, area);

/** Without lines that only touch the part, the longest first. */
const weighty = (pieces: readonly Piece[]): readonly Piece[] =>
  pieces
    .filter(({ line, mm }) => mm > Math.min(crumbMm, lengthMm(line.points) / 2))
    .toSorted((a, b) => b.mm - a.mm);

/**
 * Where the file may lie: as it is, its lower left corner at the card's, or the shape that votes of its own shapes say.
 * The first of those that have most of the drawing in place.
 */
const bestShift = (toolpath: Toolpath, wanted: Wanted, layers: readonly DrawnLayer[]): Point => {
  const drawn = layers.flatMap(({ polylines }) => polylines);
  const candidates: readonly Point[] = [
    [0, 0],
    ...shiftBetween(
      toolpath.lines.map(({ points }) => points),
      drawn,
    ),
    ...votedShifts(toolpath, layers),
  ];
  const places = samplesOf(toolpath.lines);
  const hits = candidates.map(([dx, dy]) =>
    wanted.hits(places.map(([x, y]): Point => [x + dx, y + dy])),
  );
  const most = Math.max(...hits);
  return candidates[hits.indexOf(most)] ?? [0, 0];
};

const shiftBetween = (there: readonly Polyline[], here: readonly Polyline[]): readonly Point[] => {
  const [from, to] = [boxAround(there), boxAround(here)];
  return from === undefined || to === undefined
    ? []
    : [[to.leftMm - from.leftMm, to.bottomMm - from.bottomMm]];
};

const mostSamples = 4000;

/** Middles of straight pieces, spread over the drawing. */
const samplesOf = (lines: readonly PathLine[]): readonly Point[] => {
  const middles = lines.flatMap(({ points }) =>
    points.slice(1).map((to, i): Point => {
      const from = points[i] ?? to;
      return [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
    }),
  );
  const every = Math.max(1, Math.ceil(middles.length / mostSamples));
  return middles.filter((_, i) => i % every === 0);
};

const mostVoters = 150;

/**
 * Every closed line as big as a cell's shape says by how much it lies beside each cell; shifts that several name are worth
 * a try, whatever else was added to the file or taken from it.
 */
const votedShifts = ({ lines }: Toolpath, layers: readonly DrawnLayer[]): readonly Point[] => {
  const cells = layers
    .filter(({ kind }) => kind === 'rung')
    .flatMap(({ polylines }) => polylines.flatMap((line) => boxAround([line]) ?? []));
  const [first] = cells;
  if (first === undefined) return [];
  const [width, height] = [first.rightMm - first.leftMm, first.topMm - first.bottomMm];
  const shapes = joinLines(lines)
    .filter(({ points }) => isClosed(points))
    .flatMap(({ points }) => boxAround([points]) ?? [])
    .filter(
      (box) =>
        Math.abs(box.rightMm - box.leftMm - width) < tolerance &&
        Math.abs(box.topMm - box.bottomMm - height) < tolerance,
    )
    .slice(0, mostVoters);
  const votes = new Map<string, { readonly shift: Point; count: number }>();
  for (const shape of shapes)
    for (const cell of cells) {
      const shift: Point = [cell.leftMm - shape.leftMm, cell.bottomMm - shape.bottomMm];
      const key = shift.map((mm) => Math.round(mm / tolerance)).join(' ');
      const vote = votes.get(key);
      if (vote === undefined) votes.set(key, { shift, count: 1 });
      else vote.count += 1;
    }
  return [...votes.values()]
    .toSorted((a, b) => b.count - a.count)
    .slice(0, 3)
    .map(({ shift }) => shift);
};
