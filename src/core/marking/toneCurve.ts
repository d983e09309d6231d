import { isotonic, type IsotonicFit } from '../../num/isotonic.ts';
import { monotoneCubic, valueAt, type MonotoneCubic } from '../../num/monotoneCubic.ts';
import { invertPositive, times, weightedCross, type Matrix } from '../../num/symmetricMatrix.ts';
import { done, refused, type Outcome } from '../problem.ts';

/** How light one step of a strip came out. */
export interface ToneRead {
  /** What it got, positive: see `doseOf`. */
  readonly dose: number;
  /** CIE L*, 0 black to 100 white. */
  readonly lightness: number;
}

/** How light a mark comes out by what it gets: it turns one way only. */
export interface ToneCurve {
  /** −1: more makes it darker, as wood; 1: paler, as slate or frosted acrylic. */
  readonly turns: -1 | 1;
  /** ln dose against turns · L*, which never falls. */
  readonly rising: MonotoneCubic;
  /** Standard uncertainty of L* at each knot. */
  readonly standardL: readonly number[];
}

/** How much the slope may change from step to step, L*. Smaller draws it smoother. Common practice, no source. */
const bendL = 2.5;
const leastReads = 4;
/** A strip whose lightness changes by less shows no tone, L*. Common practice, no source. */
const leastRangeL = 6;

/**
 * The tone curve of a strip: readings are smoothed by how much a slope may bend from step to step (penalised least squares:
 * (W + D′D/b²)⁻¹·W·y, of which the inverse is the uncertainty too), made monotone by pooling the way that misfits less, and joined
 * by a cubic without overshoot. Where no curve that turns one way comes as near to them as was said of them, they count as that much
 * less sure. Source of the smoother: Whittaker 1923 (from memory).
 * `readingL`: the standard uncertainty of one reading with the grain under it, L*.
 * Refuses: `tone-too-few`; `tone-too-flat`, where hardly anything changes.
 */
export const toneCurve = (reads: readonly ToneRead[], readingL: number): Outcome<ToneCurve> => {
  const steps = reads
    .toSorted((a, b) => a.dose - b.dose)
    // Two settings may come to one dose when they are rounded: the first of them counts.
    .filter(({ dose }, i, all) => i === 0 || dose > (all[i - 1]?.dose ?? NaN) * (1 + 1e-9));
  const tooFew = refused('tone-too-few', { least: leastReads });
  if (steps.length < leastReads) return tooFew;
  const lnDose = steps.map(({ dose }) => Math.log(dose));
  const light = steps.map(({ lightness }) => lightness);
  const [rises, falls] = [bestOneWay(light, true), bestOneWay(light, false)];
  const turns = rises.sse < falls.sse ? 1 : -1;
  const { sse, blockStarts } = turns === 1 ? rises : falls;
  const pooled = light.length + 1 - blockStarts.length;
  const weight = 1 / Math.max(readingL ** 2, pooled === 0 ? 0 : sse / pooled);
  const spread = invertPositive(information(lnDose, weight))?.inverse;
  if (spread === undefined) return tooFew;
  const smooth = times(
    spread,
    light.map((value) => value * weight),
  );
  const { fit } = bestOneWay(smooth, turns === 1);
  const rangeL = Number((turns * ((fit.at(-1) ?? NaN) - (fit[0] ?? NaN))).toFixed(1));
  if (!(rangeL >= leastRangeL)) return refused('tone-too-flat', { rangeL, leastL: leastRangeL });
  return done({
    turns,
    rising: monotoneCubic(
      lnDose,
      fit.map((value) => turns * value),
    ),
    standardL: spread.map((row, i) => Math.sqrt(row[i] ?? NaN)),
  });
};

const bestOneWay = (values: readonly number[], increasing: boolean): IsotonicFit =>
  isotonic(
    values,
    values.map(() => 1),
    { increasing },
  );

/** W + D′D/b², D how the slope changes at each inner knot, a slope being the change over a usual step. */
const information = (x: readonly number[], weight: number): Matrix => {
  const usual = ((x.at(-1) ?? NaN) - (x[0] ?? NaN)) / (x.length - 1);
  const bends = x.slice(2).map((right, k) => {
    const [left = NaN, middle = NaN] = x.slice(k, k + 2);
    const [before, after] = [usual / (middle - left), usual / (right - middle)];
    return x.map((_, i) =>
      i === k ? before : i === k + 1 ? -before - after : i === k + 2 ? after : 0,
    );
  });
  const stiff = weightedCross(
    bends,
    bends.map(() => bendL ** -2),
  );
  return stiff.map((row, i) => row.map((value, j) => value + (i === j ? weight : 0)));
};

export interface Tone {
  readonly lightness: number;
  /** Standard uncertainty of its L*. */
  readonly standardL: number;
}

/** What a dose comes out as; beyond the strip as at its end. */
export const toneAt = ({ turns, rising, standardL }: ToneCurve, dose: number): Tone => {
  const { x } = rising;
  const at = Math.min(x.at(-1) ?? NaN, Math.max(x[0] ?? NaN, Math.log(dose)));
  const k = Math.min(
    x.findLastIndex((knot) => knot <= at),
    x.length - 2,
  );
  const [x0 = NaN, x1 = NaN] = x.slice(k, k + 2);
  const [s0 = NaN, s1 = NaN] = standardL.slice(k, k + 2);
  return {
    lightness: turns * valueAt(rising, at),
    standardL: s0 + ((s1 - s0) * (at - x0)) / (x1 - x0),
  };
};
