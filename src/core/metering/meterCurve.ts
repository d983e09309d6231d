import { chiSquareQuantile } from '../../num/distributions.ts';
import { isotonic } from '../../num/isotonic.ts';
import { kronecker } from '../../num/kronecker.ts';
import {
  lastXAtOrBelow,
  monotoneCubic,
  valueAt,
  type MonotoneCubic,
} from '../../num/monotoneCubic.ts';
import { normalQuantile } from '../../num/normal.ts';
import { weightedQuantiles } from '../../num/weightedQuantile.ts';
import { done, refused, type Outcome } from '../problem.ts';
import type { TubePoint } from '../machine/machine.ts';
import { meterNoise, sdOfMean, type MeterNoise } from './meterNoise.ts';
import {
  firingBracket,
  litSettings,
  meterSettings,
  type FiringBracket,
  type MeterSetting,
} from './meterSettings.ts';

/** What the tube draws at each setting, as far as readings tell, and how far they leave it open. */
export interface MeterCurve {
  /** Through the settings at which the tube fired each time; setting in % against current in mA. */
  readonly between: MonotoneCubic;
  readonly firing: FiringBracket;
  readonly noise: MeterNoise;
  /** Curves that the readings allow just as well: what the bands are read off. */
  readonly draws: readonly MonotoneCubic[];
}

/** A figure with the band in which it lies with 95 % confidence. */
export interface Banded {
  readonly value: number;
  readonly low: number;
  /** Null: above what was read, nobody knows how far. */
  readonly high: number | null;
}

/** How many curves are drawn from the readings: their 2.5 % quantile then stands within about 2 % of the band. */
const drawCount = 400;

/**
 * The curve through the readings of one metering: each setting's mean counts by its readings (weighted isotonic), a
 * monotone cubic goes through. Settings where it stayed dark or flickered bound the firing threshold and bend nothing.
 * Refuses: `tube-reading-impossible`, `tube-never-fired`, `tube-readings-too-few`. O(draws × settings), ~5 ms.
 */
export const meterCurve = (readings: readonly TubePoint[]): Outcome<MeterCurve> => {
  const impossible = readings.find(({ powerPct, currentMa }) => !isPossible(powerPct, currentMa));
  if (impossible !== undefined) {
    const { powerPct, currentMa } = impossible;
    return refused('tube-reading-impossible', { powerPct, currentMa });
  }
  const settings = meterSettings(readings);
  const lit = litSettings(settings);
  const firing = firingBracket(settings);
  if (settings.length >= 2 && lit.length === 0) return refused('tube-never-fired');
  if (lit.length < 2 || firing === null)
    return refused('tube-readings-too-few', { settings: lit.length });
  const noise = meterNoise(settings);
  return done({
    between: curveThrough(
      lit,
      lit.map(({ meanMa }) => meanMa),
    ),
    firing,
    noise,
    draws: drawnCurves(lit, noise),
  });
};

const isPossible = (powerPct: number, currentMa: number): boolean =>
  powerPct >= 0 && powerPct <= 100 && currentMa >= 0 && Number.isFinite(currentMa);

const curveThrough = (lit: readonly MeterSetting[], currents: readonly number[]): MonotoneCubic =>
  monotoneCubic(
    lit.map(({ powerPct }) => powerPct),
    // What rises by itself is its own isotonic fit: most draws do.
    rises(currents)
      ? currents
      : isotonic(
          currents,
          lit.map(({ readingsMa }) => readingsMa.length),
        ).fit,
  );

const rises = (values: readonly number[]): boolean =>
  values.every((value, i) => value >= (values[i - 1] ?? -Infinity));

/**
 * Curves through means that are moved as far as they may be wrong: by Student's law with the noise's degrees of freedom,
 * one and the same noise in all settings of a draw, on a fixed quasi-random sequence.
 */
const drawnCurves = (lit: readonly MeterSetting[], noise: MeterNoise): readonly MonotoneCubic[] => {
  const spread = kronecker(lit.length + 1);
  return Array.from({ length: drawCount }, (_, draw) => {
    const stretch = Math.sqrt(noise.degrees / chiSquareQuantile(spread.at(draw, 0), noise.degrees));
    const drawn = { ...noise, sdMa: noise.sdMa * stretch };
    const moved = lit.map(
      (setting, i) =>
        setting.meanMa + sdOfMean(drawn, setting) * normalQuantile(spread.at(draw, i + 1)),
    );
    return curveThrough(lit, moved);
  });
};

/**
 * What the tube draws at a setting, mA. Dark is 0, and sure. Refuses what no reading bears out: `meter-beyond-readings`,
 * and between the last dark and the first lit setting `meter-between-dark-and-lit`.
 */
export const currentAt = (curve: MeterCurve, powerPct: number): Outcome<Banded> => {
  const { darkAtPct, firesAtPct } = curve.firing;
  const mostPct = curve.between.x.at(-1) ?? NaN;
  if (powerPct >= 0 && darkAtPct !== null && powerPct <= darkAtPct)
    return done({ value: 0, low: 0, high: 0 });
  if (darkAtPct !== null && powerPct > darkAtPct && powerPct < firesAtPct)
    return refused('meter-between-dark-and-lit', { powerPct, darkAtPct, firesAtPct });
  if (!(powerPct >= firesAtPct && powerPct <= mostPct))
    return refused('meter-beyond-readings', { powerPct, leastPct: firesAtPct, mostPct });
  const [low, high] = band(curve.draws.map((drawn) => Math.max(0, valueAt(drawn, powerPct))));
  return done({ value: valueAt(curve.between, powerPct), low, high });
};

/**
 * The highest setting at which the tube draws no more than this current, %. Refuses a current that no reading reached
 * (`meter-current-not-reached`) or that is below what it draws where it begins to fire (`meter-current-below-firing`).
 */
export const settingAt = (curve: MeterCurve, currentMa: number): Outcome<Banded> => {
  const { x, y } = curve.between;
  const [leastMa = NaN, mostMa = NaN, mostPct = NaN] = [y[0], y.at(-1), x.at(-1)];
  if (!(currentMa <= mostMa))
    return refused('meter-current-not-reached', { currentMa, mostMa: round(mostMa), mostPct });
  const value = currentMa === mostMa ? mostPct : lastXAtOrBelow(curve.between, currentMa);
  if (value === null)
    return refused('meter-current-below-firing', {
      currentMa,
      leastMa: round(leastMa),
      firesAtPct: curve.firing.firesAtPct,
    });
  const [low, high] = band(curve.draws.map((drawn) => settingIn(drawn, currentMa)));
  return done({ value, low, high: high > mostPct ? null : high });
};

/** Where a drawn curve reaches a current; just past its end where it does not, its beginning where it is above already. */
const settingIn = (drawn: MonotoneCubic, currentMa: number): number => {
  const [first = NaN, last = NaN] = [drawn.x[0], drawn.x.at(-1)];
  const [least = NaN, most = NaN] = [drawn.y[0], drawn.y.at(-1)];
  if (currentMa > most) return last + 1e-6;
  return currentMa < least ? first : (lastXAtOrBelow(drawn, currentMa) ?? last);
};

/** The band of some equally likely values that leaves out `outside` of them, half on each side: 95 % of them stay inside. */
export const band = (
  values: readonly number[],
  outside = 0.05,
): readonly [low: number, high: number] => {
  const sorted = Float64Array.from(values);
  const equal = new Float64Array(values.length).fill(1);
  const [low = NaN, high = NaN] = weightedQuantiles(sorted, equal, [outside / 2, 1 - outside / 2]);
  return [low, high];
};

const round = (ma: number): number => Number(ma.toFixed(2));
