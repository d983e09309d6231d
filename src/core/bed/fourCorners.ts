import type { CardDrawing, DrawnLayer } from '../card/cardDrawing.ts';
import type { DrawnPart } from '../card/cardParts.ts';
import { wordsBelow } from '../card/cardParts.ts';
import { cellLines } from '../card/cellLines.ts';
import { firingProblem, type FiringLimits } from '../card/firingLimits.ts';
import { wordsBlockMm } from '../card/cardLayout.ts';
import { codeLettering, depthMm, riseMm, wordLettering } from '../card/lettering.ts';
import { textWidthMm, writeText } from '../card/letters.ts';
import { marksColour, rungColours } from '../card/rungColours.ts';
import { layerName } from '../card/settingWords.ts';
import { shapeBoxMm, shapeOutline, type TestShape } from '../card/testShapes.ts';
import type { Bed } from '../machine/machine.ts';
import type { Setting } from '../machine/setting.ts';
import type { Point } from '../path/point.ts';
import { done, problemOf, refused, type Outcome, type Problem } from '../problem.ts';
import { bedPlaces, placeInitials, type BedPlace } from './place.ts';

/** What is to be cut in the four corners of a bed. */
export interface FourCornersWish {
  readonly bed: Bed;
  /** One setting for all: near the changeover, where about two thirds come out. */
  readonly setting: Setting;
  /** For the words; absent: their layer has no setting, and no G-code can be written. */
  readonly scoring?: Setting;
  readonly shape: TestShape;
  /** 4–80 mm. */
  readonly sizeMm: number;
  /** 2–24. */
  readonly cellsEach: number;
  /** From the bed's edges to the clusters, 0–200 mm. */
  readonly marginMm: number;
  /** What shapes and words are held to. */
  readonly limits: FiringLimits;
}

/** One cell of the job, named for its place: `FL1`. Millimetres from the bed's front left corner. */
export interface BedCell {
  readonly id: string;
  readonly place: BedPlace;
  readonly xMm: number;
  readonly yMm: number;
}

export interface FourCorners {
  /** In the order of cutting. */
  readonly cells: readonly BedCell[];
  /** As big as the bed, front edge at the bottom. */
  readonly drawing: CardDrawing;
}

const limits = { sizeMm: [4, 80], cellsEach: [2, 24], marginMm: [0, 200] } as const;

/**
 * The four-corners job: the same cells at the same setting near each corner of the bed, so that a place where less light
 * arrives, or where the sheet lies out of focus, shows. The places take turns, a new one first in each round: tube and
 * water that warm up as it runs weigh on all four alike. O(cells).
 */
export const fourCorners = (wish: FourCornersWish): Outcome<FourCorners> => {
  const problem = outOfRange(wish) ?? belowGap(wish) ?? beyondLimits(wish);
  if (problem !== undefined) return { ok: false, problem };
  const block = blockOf(wish);
  const { widthMm, heightMm } = wish.bed;
  const needed = {
    neededWidthMm: Math.ceil(2 * (block.widthMm + wish.marginMm)),
    neededHeightMm: Math.ceil(2 * (block.heightMm + wish.marginMm)),
  };
  if (widthMm < needed.neededWidthMm || heightMm < needed.neededHeightMm)
    return refused('bed-too-small', { widthMm, heightMm, ...needed });

  const lowerLeft = (place: BedPlace): Point => [
    place.endsWith('left') ? wish.marginMm : widthMm - wish.marginMm - block.widthMm,
    place.startsWith('front') ? wish.marginMm : heightMm - wish.marginMm - block.heightMm,
  ];
  const cells = inTurns(wish.cellsEach).map(({ place, i }): BedCell => {
    const [left, bottom] = lowerLeft(place);
    const [x, y] = block.spots[i] ?? [0, 0];
    return { id: `${placeInitials[place]}${String(i + 1)}`, place, xMm: left + x, yMm: bottom + y };
  });
  const names = bedPlaces.map((place): DrawnPart => {
    const [left, bottom] = lowerLeft(place);
    const at: Point = [left, bottom + block.heightMm - riseMm(codeLettering)];
    return { of: { what: 'hint' }, polylines: writeText(labels[place], at, codeLettering) };
  });
  return done({ cells, drawing: drawn(wish, cells, names) });
};

/** What is cut beside each cluster; kept in the drawing's own signs. */
const labels: Readonly<Record<BedPlace, string>> = {
  'front-left': 'FRONT-LEFT',
  'front-right': 'FRONT-RIGHT',
  'back-left': 'BACK-LEFT',
  'back-right': 'BACK-RIGHT',
};

const outOfRange = (wish: FourCornersWish): Problem | undefined => {
  for (const what of ['sizeMm', 'cellsEach', 'marginMm'] as const) {
    const [least, most] = limits[what];
    const value = wish[what];
    if (!(value >= least && value <= most))
      return problemOf('bed-wish-out-of-range', { what, value, least, most });
  }
  return Number.isInteger(wish.cellsEach)
    ? undefined
    : problemOf('bed-wish-out-of-range', {
        what: 'cellsEach',
        value: wish.cellsEach,
        least: limits.cellsEach[0],
        most: limits.cellsEach[1],
      });
};

/** A piece smaller than a gap between slats drops and tips up. */
const belowGap = ({ bed, shape, sizeMm }: FourCornersWish): Problem | undefined => {
  const { widthMm, heightMm } = shapeBoxMm(shape, sizeMm);
  return bed.gapMm !== undefined && Math.min(widthMm, heightMm) <= bed.gapMm
    ? problemOf('bed-cell-below-gap', { sizeMm, gapMm: bed.gapMm })
    : undefined;
};

const beyondLimits = ({ setting, scoring, limits }: FourCornersWish): Problem | undefined =>
  firingProblem('cell', setting, limits) ??
  (scoring === undefined ? undefined : firingProblem('marks', scoring, limits));

interface Block {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Middles of the shapes, from the block's lower left corner. */
  readonly spots: readonly Point[];
}

/** The cells of one place, row by row, with the place's name above them. */
const blockOf = ({ shape, sizeMm, cellsEach, setting }: FourCornersWish): Block => {
  const box = shapeBoxMm(shape, sizeMm);
  const columns = Math.ceil(Math.sqrt(cellsEach));
  const rows = Math.ceil(cellsEach / columns);
  const wordsMm = Math.max(
    ...cellLines(setting, 'BR24').map((line) => textWidthMm(line, wordLettering)),
  );
  const roomMm = Math.max(box.widthMm, wordsMm);
  const stepX = roomMm + 4;
  const stepY = box.heightMm + wordsBlockMm() + 2.5;
  const nameMm = riseMm(codeLettering) + depthMm(codeLettering) + 2;
  const nameWidthMm = Math.max(
    ...Object.values(labels).map((label) => textWidthMm(label, codeLettering)),
  );
  const heightMm = (rows - 1) * stepY + box.heightMm + wordsBlockMm() + nameMm;
  const firstY = heightMm - nameMm - box.heightMm / 2;
  return {
    widthMm: Math.max((columns - 1) * stepX + roomMm, nameWidthMm),
    heightMm,
    spots: Array.from({ length: cellsEach }, (_, i): Point => [
      roomMm / 2 + (i % columns) * stepX,
      firstY - Math.floor(i / columns) * stepY,
    ]),
  };
};

/** Round by round one cell of each place; each round begins with the next place. */
const inTurns = (rounds: number): readonly { readonly place: BedPlace; readonly i: number }[] =>
  Array.from({ length: rounds }, (_, i) =>
    bedPlaces.flatMap((_place, turn) => {
      const place = bedPlaces[(i + turn) % bedPlaces.length];
      return place === undefined ? [] : [{ place, i }];
    }),
  ).flat();

const drawn = (
  wish: FourCornersWish,
  cells: readonly BedCell[],
  names: readonly DrawnPart[],
): CardDrawing => {
  const { bed, setting, scoring, shape, sizeMm } = wish;
  const halfHeight = shapeBoxMm(shape, sizeMm).heightMm / 2;
  const words = cells.map(({ id, xMm, yMm }): DrawnPart => ({
    of: { what: 'words', cell: id },
    polylines: wordsBelow(cellLines(setting, id), [xMm, yMm - halfHeight]),
  }));
  const shapes = cells.map(({ id, xMm, yMm }): DrawnPart => ({
    of: { what: 'cell', cell: id },
    polylines: [shapeOutline(shape, sizeMm, [xMm, yMm])],
  }));
  const marks = [...names, ...words];
  const layers: readonly DrawnLayer[] = [
    {
      kind: 'marks',
      name: scoring === undefined ? 'marks' : layerName('marks', scoring),
      colour: marksColour,
      ...(scoring === undefined ? {} : { setting: scoring }),
      parts: marks,
      polylines: marks.flatMap(({ polylines }) => polylines),
    },
    {
      kind: 'rung',
      rung: 'A',
      name: layerName('A', setting),
      colour: rungColours(1)[0] ?? marksColour,
      setting,
      parts: shapes,
      polylines: shapes.flatMap(({ polylines }) => polylines),
    },
  ];
  return { widthMm: bed.widthMm, heightMm: bed.heightMm, layers };
};
