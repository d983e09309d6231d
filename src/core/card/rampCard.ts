import { checkedRamp, sineOf, type FocusRamp } from '../focus/focusRamp.ts';
import type { Setting } from '../machine/setting.ts';
import { nearestStep } from '../machine/speedSteps.ts';
import type { Point } from '../path/point.ts';
import type { Polyline } from '../path/polyline.ts';
import { done, refused, type Outcome, type Problem } from '../problem.ts';
import type { BelievedChangeover } from './cardRequest.ts';
import type { CardDrawing, DrawnLayer } from './cardDrawing.ts';
import type { DrawnPart } from './cardParts.ts';
import { firingProblem, type FiringLimits } from './firingLimits.ts';
import { hintLettering, wordLettering } from './lettering.ts';
import { textWidthMm, writeText } from './letters.ts';
import { marksColour, rungColours } from './rungColours.ts';
import { rungLetter } from './rungLetter.ts';
import { layerName } from './settingWords.ts';

/** One line of a ramp card, drawn uphill. */
export interface RampLine {
  readonly letter: string;
  readonly setting: Setting;
  /** Power over speed, as a share of the first line's. */
  readonly dose: number;
}

/** A strip to be drawn on while it lies on a ramp: three lines up it, each weaker than the one before, and a ruler. */
export interface RampCard {
  /** What is to be said of what the strip is of; absent: nothing. */
  readonly ofMaterial?: readonly Problem[];
  readonly ramp: FocusRamp;
  /** The strongest first. */
  readonly lines: readonly RampLine[];
}

export interface RampCardRequest {
  readonly ramp: FocusRamp;
  /** What a line is drawn with that marks the strip plainly and does not cut it. */
  readonly setting: Setting;
  readonly machine: FiringLimits['machine'];
  /** Where the strip is believed to be cut through. */
  readonly believed: BelievedChangeover;
}

/** Doses of the three lines: far enough apart that they fade at different places. */
const doses = [1, 0.7, 0.5] as const;
/** Lines begin and end so far from the strip's ends along it, mm: clear of its edge, and of where it rests on the block. */
const freeEndMm = 6;
const lineStepMm = 5;
const rulerEveryMm = 10;
const figureEveryMm = 20;
const marginMm = 4;
const rulerMm = 9;

/**
 * A ramp card: refuses a ramp that may not be used, a power above the machine's limit and a speed out of its range
 * (`ramp-setting-out-of-range`), and a line that overdrives the tube or may cut the strip. Where the weaker lines would be faster than the machine goes, they are drawn with less
 * power instead.
 */
export const rampCard = ({
  ramp,
  setting,
  machine,
  believed,
}: RampCardRequest): Outcome<RampCard> => {
  const checked = checkedRamp(ramp);
  if (!checked.ok) return checked;
  const { powerPct, speedMmPerS } = setting;
  const [slowest, fastest] = machine.speedRangeMmPerS;
  if (!(
    powerPct > 0 &&
    powerPct <= machine.maxPowerPct &&
    speedMmPerS >= slowest &&
    speedMmPerS <= fastest
  ))
    return refused('ramp-setting-out-of-range', {
      powerPct,
      speedMmPerS,
      mostPct: machine.maxPowerPct,
      slowest,
      fastest,
    });
  const beyond = firingProblem('line', { ...setting, passes: 1 }, { machine, believed });
  if (beyond !== undefined) return { ok: false, problem: beyond };
  const base = { ...setting, passes: 1 };
  const lines = doses.map((dose, i): RampLine => {
    const own = i === 0 ? base : weaker(base, dose, fastest);
    return {
      letter: rungLetter(i),
      setting: own,
      dose: (own.powerPct / own.speedMmPerS) * (speedMmPerS / powerPct),
    };
  });
  return done({ ramp, lines });
};

const weaker = (setting: Setting, dose: number, fastest: number): Setting => {
  const faster = nearestStep(setting.speedMmPerS / dose);
  if (faster <= fastest) return { ...setting, speedMmPerS: faster };
  return { ...setting, powerPct: Math.max(1, Math.round(setting.powerPct * dose)) };
};

/**
 * A ramp card as lines, in mm from the strip's low left corner, as the head sees it from above: lengths along the slope are
 * drawn shorter by its cosine, so that the ruler is right on the strip. Every line begins at the low end.
 */
export const rampDrawing = ({ ramp, lines }: RampCard): CardDrawing => {
  const cosine = Math.sqrt(1 - sineOf(ramp) ** 2);
  const across = (alongMm: number): number => alongMm * cosine;
  const [first] = lines;
  const colours = rungColours(lines.length);
  const heightMm = 2 * marginMm + lines.length * lineStepMm + rulerMm;
  const yOf = (i: number): number => marginMm + (lines.length - 1 - i) * lineStepMm + 1;
  const marks: readonly DrawnPart[] = [
    { of: { what: 'hint' }, polylines: ruler(ramp.lengthMm, across, heightMm - marginMm) },
  ];
  return {
    widthMm: across(ramp.lengthMm),
    heightMm,
    layers: [
      layer('marks', marks, marksColour, first?.setting, 'ruler'),
      ...lines.map(({ letter, setting }, i): DrawnLayer => {
        const y = yOf(i);
        const parts = [
          {
            of: { what: 'cell', cell: letter },
            polylines: [
              ...writeText(letter, [across(1.5), y - wordLettering.capMm / 2], wordLettering),
              stroke([across(freeEndMm), y], [across(ramp.lengthMm - freeEndMm), y]),
            ],
          },
        ] satisfies readonly DrawnPart[];
        return {
          ...layer('rung', parts, colours[i] ?? marksColour, setting, letter),
          rung: letter,
        };
      }),
    ],
  };
};

const stroke = (from: Point, to: Point): Polyline => [from, to];

const layer = (
  kind: DrawnLayer['kind'],
  parts: readonly DrawnPart[],
  colour: string,
  setting: Setting | undefined,
  label: string,
): DrawnLayer => ({
  kind,
  name: setting === undefined ? label : layerName(label, setting),
  colour,
  ...(setting === undefined ? {} : { setting }),
  parts,
  polylines: parts.flatMap(({ polylines }) => polylines),
});

/** A tick every 10 mm along the strip, a figure every 20, from the low end up. */
const ruler = (
  lengthMm: number,
  across: (alongMm: number) => number,
  topMm: number,
): readonly Polyline[] => {
  const count = Math.floor((lengthMm - freeEndMm) / rulerEveryMm);
  return Array.from({ length: count }, (_, i) => (i + 1) * rulerEveryMm).flatMap((alongMm) => {
    const x = across(alongMm);
    const figured = alongMm % figureEveryMm === 0;
    const tick = stroke([x, topMm], [x, topMm - (figured ? 4 : 2.5)]);
    if (!figured) return [tick];
    const text = String(alongMm);
    const left = x - textWidthMm(text, hintLettering) / 2;
    return [tick, ...writeText(text, [left, topMm - 5 - hintLettering.capMm], hintLettering)];
  });
};
