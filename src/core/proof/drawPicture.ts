import { boxAround, type Box } from '../path/box.ts';
import { distanceMm, type Point } from '../path/point.ts';
import type { Polyline } from '../path/polyline.ts';
import type { DrawingRemark } from './drawingRemarks.ts';
import { groupKey, type FoundPlace, type PlaceGroup } from './groupPlaces.ts';

/** How a slowed stretch is drawn: weak or hot by its verdict; `warm`, `slow`: neither, with more energy or not. */
export type StretchLook = 'not-through' | 'may-hang' | 'tips-burn' | 'warm' | 'slow';

/** A drawing as it is shown, in mm, y upwards. */
export interface ProofPicture {
  readonly box: Box;
  readonly lines: readonly Polyline[];
  readonly stretches: readonly { readonly look: StretchLook; readonly points: Polyline }[];
  /** Where the number of a group stands. */
  readonly marks: readonly {
    readonly number: number;
    readonly look: StretchLook;
    readonly at: Point;
  }[];
  /** Where a remark on the drawing points. */
  readonly spots: readonly { readonly code: string; readonly at: Point }[];
  /** Fine detail or the least of the stretches are left out. */
  readonly isSimplified: boolean;
}

/** Finer than this share of its size nobody sees on a screen. */
const fineness = 1 / 2500;
const mostPoints = 60_000;
const mostStretches = 1500;
const mostMarks = 48;
/** Numbers nearer to one another than this share of the drawing's size would cover one another. */
const marksApart = 1 / 11;
/** A stretch is drawn no shorter than this share of the drawing's size: it would be a dot that nobody sees. */
const leastStretch = 1 / 60;
/** From this energy on a stretch is warmer than the rest, though not burnt. */
const warmRatio = 1.3;

/** Simplifies what a screen could not show or a page not carry; what stands for a verdict goes first. O(points). */
export const drawPicture = (
  lines: readonly Polyline[],
  places: readonly FoundPlace[],
  groups: readonly (PlaceGroup & { readonly key: string })[],
  remarks: readonly DrawingRemark[],
): ProofPicture => {
  const box = boxAround(lines) ?? { leftMm: 0, bottomMm: 0, rightMm: 1, topMm: 1 };
  const size = Math.max(box.rightMm - box.leftMm, box.topMm - box.bottomMm, 1e-3);
  let nearMm = size * fineness;
  let drawn: readonly Polyline[] = lines.map((line) => thinnedLine(line, nearMm));
  const pointsIn = (all: readonly Polyline[]): number =>
    all.reduce((sum, { length }) => sum + length, 0);
  let isSimplified = false;
  while (pointsIn(drawn) > mostPoints && nearMm < size / 20) {
    isSimplified = true;
    nearMm *= 2;
    drawn = lines.map((line) => thinnedLine(line, nearMm));
  }
  drawn = evenly(drawn, Math.floor((mostPoints * drawn.length) / Math.max(1, pointsIn(drawn))));
  const ranked = [...places].sort(worstFirst);
  const shown = shownOf(ranked);
  const numbers = new Map(groups.map(({ key, number }) => [key, number]));
  const marks = spreadMarks(ranked, lines, numbers, size * marksApart);
  return {
    box,
    lines: drawn,
    stretches: shown.map((place) => ({
      look: lookOf(place),
      points: thinnedLine(
        stretchOf(lines[place.line] ?? [], ...seenStretch(place, size * leastStretch)),
        size * fineness,
      ),
    })),
    marks,
    spots: remarks.flatMap(({ code, at }) => (at === undefined ? [] : [{ code, at }])),
    isSimplified: isSimplified || shown.length < places.length,
  };
};

const lookOf = ({ verdicts, energyRatio }: FoundPlace): StretchLook =>
  verdicts[0] ?? (energyRatio >= warmRatio ? 'warm' : 'slow');

/** Where a stretch is drawn, in mm from the line's start: longer on both sides where it is too short to be seen. */
const seenStretch = (
  { fromMm, toMm }: FoundPlace,
  leastMm: number,
): readonly [fromMm: number, toMm: number] => {
  const moreMm = Math.max(0, (leastMm - (toMm - fromMm)) / 2);
  // Before the start of a line there is more of it only where it loops.
  const seenFromMm = fromMm < 0 ? fromMm - moreMm : Math.max(0, fromMm - moreMm);
  return [seenFromMm, Math.max(toMm + moreMm, seenFromMm + leastMm)];
};

const looks: readonly StretchLook[] = ['not-through', 'may-hang', 'tips-burn', 'warm', 'slow'];
const rankOf = (place: FoundPlace): number => looks.indexOf(lookOf(place));

/** The worst place of each group, then more where there is room. */
const spreadMarks = (
  ranked: readonly FoundPlace[],
  lines: readonly Polyline[],
  numbers: ReadonlyMap<string, number>,
  apartMm: number,
): ProofPicture['marks'] => {
  const seen = new Map<number, number>();
  // By turns, so that no kind takes all the room.
  const turns = ranked
    .flatMap((place) =>
      place.verdicts.flatMap((look) => {
        const number = numbers.get(groupKey(place, look));
        if (number === undefined) return [];
        const turn = seen.get(number) ?? 0;
        seen.set(number, turn + 1);
        return [{ place, look, number, turn }];
      }),
    )
    .sort((a, b) => a.turn - b.turn || a.number - b.number);
  const marks: { number: number; look: StretchLook; at: Point }[] = [];
  for (const { place, look, number, turn } of turns) {
    if (marks.length >= mostMarks) break;
    const at = pointAt(lines[place.line], place.atMm);
    if (at === undefined) continue;
    const isFree = marks.every((mark) => distanceMm(mark.at, at) >= apartMm);
    if (turn === 0 || isFree) marks.push({ number, look, at });
  }
  return marks;
};

/** By what is seen, then as groups are ordered: the weakest first, the hottest first. */
const worstFirst = (a: FoundPlace, b: FoundPlace): number => {
  const weak = rankOf(a) < looks.indexOf('tips-burn');
  return (
    rankOf(a) - rankOf(b) ||
    (weak ? a.marginChange - b.marginChange : b.energyRatio - a.energyRatio)
  );
};

/** All of what matters most, and of the first kind for which there is no room some from all over the drawing. */
const shownOf = (ranked: readonly FoundPlace[]): readonly FoundPlace[] => {
  const byRank = looks.map((): FoundPlace[] => []);
  for (const place of ranked) byRank[rankOf(place)]?.push(place);
  const shown: FoundPlace[] = [];
  for (const alike of byRank) {
    alike.sort((a, b) => a.line - b.line);
    shown.push(...evenly(alike, mostStretches - shown.length));
  }
  return shown;
};

/** As many, evenly over all; all of them where there is room. */
const evenly = <T>(all: readonly T[], most: number): readonly T[] =>
  all.length <= most
    ? all
    : Array.from({ length: most }, (_, i) => all[Math.floor((i * all.length) / most)]).flatMap(
        (one) => (one === undefined ? [] : [one]),
      );

/** Leaves out points nearer than this to the last one kept; ends stay, and of a loop its far side. */
const thinnedLine = (line: Polyline, nearMm: number): Polyline => {
  const kept: Point[] = [];
  line.forEach((point, i) => {
    const last = kept.at(-1);
    const isEnd = i === line.length - 1;
    if (last === undefined || isEnd || distanceMm(last, point) >= nearMm) {
      kept.push([round(point[0]), round(point[1])]);
    }
  });
  const [first, far] = [line[0], line[line.length >> 1]];
  if (kept.length === 2 && line.length > 3 && first !== undefined && far !== undefined) {
    kept.splice(1, 0, [round(far[0]), round(far[1])]);
  }
  return kept;
};

const round = (mm: number): number => Math.round(mm * 1000) / 1000;

/** Of a line, how far each of its points lies from its start: measured once, however many stretches are cut out of it. */
const runs = new WeakMap<Polyline, Float64Array>();
const runOf = (line: Polyline): Float64Array => {
  const known = runs.get(line);
  if (known !== undefined) return known;
  const run = new Float64Array(line.length);
  for (let i = 1; i < line.length; i += 1)
    run[i] = (run[i - 1] ?? NaN) + distanceMm(line[i - 1] ?? [0, 0], line[i] ?? [0, 0]);
  runs.set(line, run);
  return run;
};

/** The first segment that goes on behind a place. O(log n). */
const segmentBehind = (run: Float64Array, mm: number): number => {
  let [low, high] = [1, run.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((run[middle] ?? NaN) > mm) high = middle;
    else low = middle + 1;
  }
  return low;
};

/** The part of a line between two places, in mm from its start; before its start a loop goes on from its end. O(its points). */
const stretchOf = (line: Polyline, fromMm: number, toMm: number): Polyline => {
  const run = runOf(line);
  const wholeMm = run.at(-1) ?? 0;
  if (fromMm < 0 && wholeMm > 0)
    return [
      ...between(line, run, wholeMm + Math.max(fromMm, -wholeMm), wholeMm + Math.min(toMm, 0)),
      ...(toMm > 0 ? between(line, run, 0, toMm) : []),
    ];
  return between(line, run, fromMm, toMm);
};

const between = (line: Polyline, run: Float64Array, fromMm: number, toMm: number): Polyline => {
  const points: Point[] = [];
  for (let i = segmentBehind(run, fromMm); i < line.length; i += 1) {
    const [a, b, startMm = NaN, endMm = NaN] = [line[i - 1], line[i], run[i - 1], run[i]];
    if (a === undefined || b === undefined || startMm >= toMm) break;
    const along = (mm: number): Point => {
      const share = Math.min(1, Math.max(0, (mm - startMm) / (endMm - startMm)));
      return [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
    };
    if (points.length === 0) points.push(along(fromMm));
    if (endMm > startMm) points.push(along(toMm));
  }
  return points;
};

const pointAt = (line: Polyline | undefined, atMm: number): Point | undefined =>
  line === undefined
    ? undefined
    : (stretchOf(line, Math.max(0, atMm - 1e-6), atMm + 1e-6)[0] ?? line.at(-1));
