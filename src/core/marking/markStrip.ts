import type { CardDrawing, DrawnLayer } from '../card/cardDrawing.ts';
import { wordLettering } from '../card/lettering.ts';
import { textWidthMm, writeText } from '../card/letters.ts';
import { marksColour, rungColours } from '../card/rungColours.ts';
import { rungLetter } from '../card/rungLetter.ts';
import { cellWords, layerName } from '../card/settingWords.ts';
import type { Setting } from '../machine/setting.ts';
import type { Box } from '../path/box.ts';
import type { Point } from '../path/point.ts';
import type { Polyline } from '../path/polyline.ts';
import { done, refused, type Outcome, type Problem } from '../problem.ts';
import { doseLadder } from './doseLadder.ts';
import type { Mark } from './mark.ts';
import { markProblem, type MarkLimits } from './markLimits.ts';
import { makingBeside, proposeScore } from './proposeMarks.ts';

/** What a strip finds: shades of a filled face, or lines from just visible to deep. */
export const stripKinds = ['shades', 'lines'] as const;
export type StripKind = (typeof stripKinds)[number];

export interface MarkStripWish {
  readonly kind: StripKind;
  /** So many at most. */
  readonly steps: number;
  /** Of shades. */
  readonly lineSpacingMm: number;
}

/** A strip that is only marked, never cut. */
export interface MarkStrip extends MarkStripWish {
  /** The gentlest first. */
  readonly settings: readonly Setting[];
  /** What letters and figures are scored with. */
  readonly scoring: Setting;
  readonly widthMm: number;
  readonly heightMm: number;
  /** What is to be said of what the sheet is of; absent: nothing. */
  readonly ofMaterial?: readonly Problem[];
}

/** Long enough that the head is at its speed in the middle half, mm. */
const bandMm = 60;
/** From one step to the next, and of it what is filled. */
const pitchMm = 9;
const filledMm = 6;
const marginMm = 4;
const leastSteps = 3;
/** Of a head of which nobody knows how it starts, mm/s². Common practice, no source. */
const usualAcceleration = 1000;

/** The mark that a step of a strip is. */
export const markOfStep = (
  { kind, lineSpacingMm }: Pick<MarkStripWish, 'kind' | 'lineSpacingMm'>,
  setting: Setting,
): Exclude<Mark, { readonly kind: 'tape' }> =>
  kind === 'lines' ? { kind: 'score', setting } : { kind: 'engrave', setting, lineSpacingMm };

/**
 * A strip of steps from the gentlest to the strongest that surely does not come through. No step is faster than the head goes
 * after a quarter of a band (v² = 2·a·s), so that the middle half of each is made at the speed that stands beside it.
 * Refuses: `marks-no-room`; `strip-too-few-steps` where fewer than three differ; and what a mark is refused for.
 */
export const markStrip = (
  wish: MarkStripWish,
  cut: Setting,
  limits: MarkLimits,
): Outcome<MarkStrip> => {
  const scoring = proposeScore(cut, limits);
  if (!scoring.ok || scoring.value.kind !== 'score') return refused('marks-no-room');
  const making = makingBeside(cut, limits, markOfStep(wish, cut));
  const { accelerationMmPerS2 = usualAcceleration } = limits.machine.motion ?? {};
  const reachedMmPerS = Math.sqrt((accelerationMmPerS2 * bandMm) / 2);
  const settings = doseLadder(wish.steps, {
    ...making,
    fastestMmPerS: Math.min(making.fastestMmPerS, reachedMmPerS),
  });
  if (settings.length < leastSteps)
    return refused('strip-too-few-steps', { steps: settings.length });
  for (const setting of settings) {
    const beyond = markProblem(markOfStep(wish, setting), limits);
    if (beyond !== undefined) return { ok: false, problem: beyond };
  }
  return done({
    ...wish,
    settings,
    scoring: scoring.value.setting,
    widthMm: Math.ceil(3 * marginMm + wordsWidthMm(settings) + bandMm),
    heightMm: 2 * marginMm + blockMm(settings.length),
  });
};

const blockMm = (steps: number): number => (steps - 1) * pitchMm + filledMm;

/** From the shades to the signs at their four corners, by which a photograph of them is laid out. */
const signMm = 2;
const signArmMm = 2.5;

/** Where the shades of a strip lie, and the signs about them: mm from their own lower left corner. */
export interface ShadesLaid {
  /** The gentlest first, which is on top. */
  readonly bands: readonly Box[];
  /** From the upper left one on, with the clock. */
  readonly signs: readonly [Point, Point, Point, Point];
}

export const shadesLaid = (steps: number): ShadesLaid => {
  const [right, top] = [bandMm + signMm, blockMm(steps) + signMm];
  return {
    bands: Array.from({ length: steps }, (_, i) => {
      const topMm = blockMm(steps) - i * pitchMm;
      return { leftMm: 0, rightMm: bandMm, bottomMm: topMm - filledMm, topMm };
    }),
    signs: [
      [-signMm, top],
      [right, top],
      [right, -signMm],
      [-signMm, -signMm],
    ],
  };
};

/** An angle at each corner of the shades, open towards them. */
const cornerSigns = (steps: number): readonly Polyline[] =>
  shadesLaid(steps).signs.map(([x, y]): Polyline => {
    const [inX, inY] = [x < 0 ? signArmMm : -signArmMm, y < 0 ? signArmMm : -signArmMm];
    return [
      [x + inX, y],
      [x, y],
      [x, y + inY],
    ];
  });

/** What stands beside a step: its letter and its setting. */
const wordsOf = (setting: Setting, i: number): string => `${rungLetter(i)} ${cellWords(setting)}`;

const wordsWidthMm = (settings: readonly Setting[]): number =>
  Math.max(...settings.map((setting, i) => textWidthMm(wordsOf(setting, i), wordLettering)));

/**
 * Its lines in mm from its lower left corner, in the order of marking: words first, then step by step, the gentlest on top. Every
 * layer is one of marks, so that the check of files holds all of it to what may not come through.
 */
export const markStripDrawing = (strip: MarkStrip): CardDrawing => {
  const { settings, scoring, widthMm, heightMm } = strip;
  const colours = rungColours(settings.length);
  const left = widthMm - marginMm - bandMm;
  const topOf = (i: number): number => heightMm - marginMm - i * pitchMm;
  const words = settings.flatMap((setting, i) =>
    writeText(
      wordsOf(setting, i),
      [marginMm, topOf(i) - filledMm / 2 - wordLettering.capMm / 2],
      wordLettering,
    ),
  );
  const signs =
    strip.kind === 'shades'
      ? cornerSigns(settings.length).map((line) =>
          line.map(([x, y]): Point => [x + left, y + marginMm]),
        )
      : [];
  return {
    widthMm,
    heightMm,
    layers: [
      layer(layerName('marks', scoring), marksColour, scoring, [...words, ...signs]),
      ...settings.map((setting, i) =>
        layer(
          layerName(`marks-${rungLetter(i)}`, setting),
          colours[i] ?? marksColour,
          setting,
          stepLines(strip, left, topOf(i)),
        ),
      ),
    ],
  };
};

/** A line, or a face filled with lines to and fro. */
const stepLines = (
  { kind, lineSpacingMm }: MarkStrip,
  left: number,
  top: number,
): readonly Polyline[] => {
  if (kind === 'lines') {
    const y = top - filledMm / 2;
    return [
      [
        [left, y],
        [left + bandMm, y],
      ],
    ];
  }
  return Array.from({ length: Math.floor(filledMm / lineSpacingMm) + 1 }, (_, row) => {
    const y = top - row * lineSpacingMm;
    const line: Polyline = [
      [left, y],
      [left + bandMm, y],
    ];
    return row % 2 === 0 ? line : line.toReversed();
  });
};

const layer = (
  name: string,
  colour: string,
  setting: Setting,
  polylines: readonly Polyline[],
): DrawnLayer => ({
  ...{ kind: 'marks', name, colour, setting, polylines },
  parts: [{ of: { what: 'hint' }, polylines }],
});
