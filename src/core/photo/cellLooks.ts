import { median } from '../../num/median.ts';
import type { Card, Place } from '../card/card.ts';
import type { Point } from '../path/point.ts';
import { toneAt, type Seen, type Tone } from './opponent.ts';
import type { ShapeGrid } from './shapeGrid.ts';

/** What one cell looks like beside the sheet around it. */
export interface CellLooks {
  readonly cell: string;
  /** Shares of what lies within that look like the sheet around, like what lies under the card, and like neither. */
  readonly sheet: number;
  readonly under: number;
  readonly neither: number;
  /** How much lighter the piece is than the sheet, ln. */
  readonly shade: number;
  /** How far the sheet around is from the card's usual tone: a hand, a stain. */
  readonly odd: number;
  /** How far what lies under the card differs from it, in what either strays: no hole shows where it does not. */
  readonly contrast: number;
}

/** What all cells of a placed card look like. */
export interface CardLooks {
  readonly cells: readonly CellLooks[];
  /** The share of the window, where the card has one, that looks like the sheet: poked out, there is none. */
  readonly window?: number;
}

/** `grid`: where the card's shape is looked at, the same for every place that the card may have. */
export const cardLooks = (seen: Seen, card: Card, grid: ShapeGrid): CardLooks => {
  const sampled = card.cells.map((cell) => {
    const from = (points: readonly Point[]): readonly Tone[] =>
      shownOf(points.map(([x, y]) => toneAt(seen, cell.xMm + x, cell.yMm + y)));
    return { cell, within: from(grid.within), around: middleOf(from(grid.around)) };
  });
  const step = stepToUnder(seen, card);
  const usual = middleOf(sampled.map(({ around }) => around.middle)).middle;
  const sheetIn = (within: readonly Tone[], around: Middle): number =>
    within.filter((tone) => voteOf(minus(tone, around.middle), step, around.spread) === 'sheet')
      .length / Math.max(1, within.length);
  const window = card.trusted === undefined ? undefined : card.places.window;
  const contrast = farFrom(step, [0, 0, 0], spreadOf(sampled.map(({ around }) => around.spread)));
  return {
    ...(window === undefined
      ? {}
      : { window: sheetIn(tonesIn(seen, window, -1), middleOf(tonesIn(seen, window, 1.2))) }),
    cells: sampled.map(({ cell, within, around }) => {
      const votes = { sheet: 0, under: 0, neither: 0 };
      for (const tone of within)
        votes[voteOf(minus(tone, around.middle), step, around.spread)] += 1;
      const all = Math.max(1, within.length);
      const piece = middleOf(within).middle;
      return {
        cell: cell.id,
        sheet: votes.sheet / all,
        under: votes.under / all,
        neither: votes.neither / all,
        shade: piece[0] - around.middle[0],
        contrast,
        odd: Math.hypot(around.middle[1] - usual[1], around.middle[2] - usual[2]),
      };
    }),
  };
};

const shownOf = (tones: readonly (Tone | undefined)[]): readonly Tone[] =>
  tones.filter((tone) => tone !== undefined);

/** Within a place, well off its edge; or, beyond it, along a frame around it. */
const tonesIn = (
  seen: Seen,
  { xMm, yMm, widthMm, heightMm }: Place,
  offMm: number,
): readonly Tone[] => {
  const at = (x: number, y: number): Tone | undefined => toneAt(seen, xMm + x, yMm + y);
  if (offMm > 0)
    return shownOf(
      Array.from({ length: 40 }, (_, i) => i / 40).flatMap((t) => [
        at(t * widthMm, -offMm),
        at(-offMm, t * heightMm),
        at(widthMm + offMm, t * heightMm),
      ]),
    );
  return shownOf(
    Array.from({ length: 400 }, (_, i) =>
      at(
        -offMm + ((i % 20) / 19) * (widthMm + 2 * offMm),
        -offMm + (Math.floor(i / 20) / 19) * (heightMm + 2 * offMm),
      ),
    ),
  );
};

interface Middle {
  readonly middle: Tone;
  /** How far tones usually are from it, as a standard deviation. */
  readonly spread: Tone;
}

const middleOf = (tones: readonly Tone[]): Middle => {
  const of = (k: 0 | 1 | 2): readonly [number, number] => {
    const middle = median(tones.map((tone) => tone[k])) ?? NaN;
    const off = median(tones.map((tone) => Math.abs(tone[k] - middle))) ?? NaN;
    return [middle, 1.4826 * off];
  };
  const [a, b, c] = [of(0), of(1), of(2)];
  return { middle: [a[0], b[0], c[0]], spread: [a[1], b[1], c[1]] };
};

const spreadOf = (spreads: readonly Tone[]): Tone => middleOf(spreads).middle;

export const minus = (a: Tone, b: Tone): Tone => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

/**
 * From the sheet's tone to that of what lies under it, by pairs on either side of the card's edge: how the light falls
 * there is the same for both.
 */
const stepToUnder = (seen: Seen, card: Card): Tone => {
  const beyondMm = 1 + (card.thicknessMm ?? 3);
  const insideMm = 1;
  const { widthMm, heightMm } = card;
  const edges = [
    { from: [0, 0], along: [1, 0], inward: [0, 1], length: widthMm },
    { from: [0, heightMm], along: [1, 0], inward: [0, -1], length: widthMm },
    { from: [0, 0], along: [0, 1], inward: [1, 0], length: heightMm },
    { from: [widthMm, 0], along: [0, 1], inward: [-1, 0], length: heightMm },
  ] as const;
  const steps = edges.flatMap(({ from, along, inward, length }) =>
    Array.from({ length: 40 }, (_, i) => ((i + 0.5) / 40) * length).flatMap((t) => {
      const at = (mm: number): Tone | undefined =>
        toneAt(
          seen,
          from[0] + t * along[0] + mm * inward[0],
          from[1] + t * along[1] + mm * inward[1],
        );
      const inner = at(insideMm);
      return [beyondMm, beyondMm + 3].flatMap((mm) => {
        const outer = at(-mm);
        return inner === undefined || outer === undefined ? [] : [minus(outer, inner)];
      });
    }),
  );
  return middleOf(steps).middle;
};

/** What a tilted piece, grain and stains change the light by, and hues; ln. Common practice, no source. */
const strayLight = 0.13;
const strayHue = 0.06;
/** Down in a hole it is darker by up to so much, ln. */
const mostShadow = 1.5;
/** Further from both than so many spreads is neither. */
const tooFar = 4;

const farFrom = (tone: Tone, from: Tone, spread: Tone): number =>
  Math.hypot(
    (tone[0] - from[0]) / Math.hypot(spread[0], strayLight),
    (tone[1] - from[1]) / Math.hypot(spread[1], strayHue),
    (tone[2] - from[2]) / Math.hypot(spread[2], strayHue),
  );

const voteOf = (off: Tone, step: Tone, spread: Tone): 'sheet' | 'under' | 'neither' => {
  const sheet = farFrom(off, [0, 0, 0], spread);
  const shadow = Math.max(0, Math.min(mostShadow, step[0] - off[0]));
  const under = farFrom(off, [step[0] - shadow, step[1], step[2]], spread) + 0.4 * shadow;
  if (Math.min(sheet, under) > tooFar) return 'neither';
  return sheet <= under ? 'sheet' : 'under';
};
