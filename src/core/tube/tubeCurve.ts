import { isotonic } from '../../num/isotonic.ts';
import {
  lastXAtOrBelow,
  monotoneCubic,
  valueAt,
  type MonotoneCubic,
} from '../../num/monotoneCubic.ts';
import { done, refused, type Outcome } from '../problem.ts';
import type { Machine, TubePoint } from '../machine/machine.ts';

/** How far, in points of setting, the curve is drawn straight on past its first and last reading. */
export const tubeCurveReachPct = 10;

/** What a tube draws at each power setting, from its milliammeter readings. */
export interface TubeCurve {
  /** Setting in % against current in mA, between the first reading and the last. */
  readonly between: MonotoneCubic;
  /** Between which two readings the tube began to fire; null where no reading found it dark. */
  readonly firing: { readonly darkAtPct: number; readonly firesAtPct: number } | null;
  /** The most by which a reading had to be moved so that more setting never draws less, mA. */
  readonly largestCorrectionMa: number;
}

/** A current, and whether it lies past the readings. */
export interface DrawnCurrent {
  readonly currentMa: number;
  readonly extrapolated: boolean;
}

/**
 * The curve through a machine's tube readings: weighted isotonic (several readings at one setting count as many), then
 * a monotone cubic. Null: the machine has no readings, so that the setting itself has to stand for what is delivered.
 */
export const tubeCurve = (machine: Pick<Machine, 'tubePoints'>): Outcome<TubeCurve> | null => {
  const points = machine.tubePoints ?? [];
  if (points.length === 0) return null;
  const impossible = points.find((point) => !isPossible(point));
  if (impossible !== undefined) {
    const { powerPct, currentMa } = impossible;
    return refused('tube-reading-impossible', { powerPct, currentMa });
  }
  const readings = groupedBySetting(points);
  if (readings.length < 2) return refused('tube-readings-too-few', { settings: readings.length });
  if (points.every((point) => point.currentMa === 0)) return refused('tube-never-fired');
  return done(curveThrough(readings));
};

const isPossible = ({ powerPct, currentMa }: TubePoint): boolean =>
  isSetting(powerPct) && currentMa >= 0 && Number.isFinite(currentMa);

/** The mean reading at one setting, and how many it is the mean of. */
interface MeanReading extends TubePoint {
  readonly count: number;
}

const groupedBySetting = (points: readonly TubePoint[]): readonly MeanReading[] => {
  const settings = [...new Set(points.map((point) => point.powerPct))].sort((a, b) => a - b);
  return settings.map((powerPct) => {
    const here = points.filter((point) => point.powerPct === powerPct);
    const sum = here.reduce((total, point) => total + point.currentMa, 0);
    return { powerPct, currentMa: sum / here.length, count: here.length };
  });
};

const curveThrough = (readings: readonly MeanReading[]): TubeCurve => {
  const settings = readings.map((reading) => reading.powerPct);
  const currents = readings.map((reading) => reading.currentMa);
  const { fit } = isotonic(
    currents,
    readings.map((reading) => reading.count),
  );
  const darkAtPct = settings[fit.lastIndexOf(0)];
  const firesAtPct = settings[fit.lastIndexOf(0) + 1];
  return {
    between: monotoneCubic(settings, fit),
    firing: darkAtPct === undefined || firesAtPct === undefined ? null : { darkAtPct, firesAtPct },
    largestCorrectionMa: Math.max(
      ...currents.map((current, i) => Math.abs(current - (fit[i] ?? NaN))),
    ),
  };
};

/**
 * What the tube draws at a setting, mA. Past the readings the curve goes straight on through its last two readings (its
 * first two on the lower side, never below 0 mA) for {@link tubeCurveReachPct} points, flagged `extrapolated`; further
 * out, and outside 0–100 %, it says null. At and below a setting where the tube was dark it draws nothing, and that is no extrapolation.
 */
export const currentMaAt = (curve: TubeCurve, powerPct: number): DrawnCurrent | null => {
  const { first, last } = ends(curve);
  if (!isSetting(powerPct)) return null;
  if (curve.firing !== null && powerPct <= curve.firing.darkAtPct) {
    return { currentMa: 0, extrapolated: false };
  }
  if (powerPct >= first.powerPct && powerPct <= last.powerPct) {
    return { currentMa: valueAt(curve.between, powerPct), extrapolated: false };
  }
  const end = powerPct < first.powerPct ? first : last;
  const beyond = powerPct - end.powerPct;
  if (!(Math.abs(beyond) <= tubeCurveReachPct)) return null;
  return { currentMa: Math.max(0, end.currentMa + beyond * end.maPerPct), extrapolated: true };
};

/**
 * The highest setting, in %, at which the tube draws no more than this current; null where that lies more than
 * {@link tubeCurveReachPct} points past the readings, or nowhere. The inverse of {@link currentMaAt}, by bracketing.
 */
export const powerPctAt = (
  curve: TubeCurve,
  currentMa: number,
): { readonly powerPct: number; readonly extrapolated: boolean } | null => {
  const { first, last } = ends(curve);
  const within = lastXAtOrBelow(curve.between, currentMa);
  if (within !== null && (within < last.powerPct || last.maPerPct === 0)) {
    return { powerPct: within, extrapolated: false };
  }
  if (!(currentMa >= 0)) return null;
  // Past the readings the slope may be 0: then `beyond` is infinite, and the answer null.
  const end = currentMa < first.currentMa ? first : last;
  const beyond = (currentMa - end.currentMa) / end.maPerPct;
  const powerPct = end.powerPct + beyond;
  if (!(Math.abs(beyond) <= tubeCurveReachPct) || !isSetting(powerPct)) return null;
  return { powerPct, extrapolated: beyond !== 0 };
};

/**
 * Where the straight line through the last two readings reaches a current, however far past them: nobody knows what the tube
 * draws there, but it is taken to be no less. Null where that line does not rise to it.
 */
export const powerPctStraightOn = (curve: TubeCurve, currentMa: number): number | null => {
  const { last } = ends(curve);
  const powerPct = last.powerPct + (currentMa - last.currentMa) / last.maPerPct;
  return currentMa >= last.currentMa && isSetting(powerPct) ? powerPct : null;
};

const isSetting = (powerPct: number): boolean => powerPct >= 0 && powerPct <= 100;

interface End extends TubePoint {
  readonly maPerPct: number;
}

/** The first and the last reading, each with the slope of the line on which the curve goes on. */
const ends = ({ between: { x, y } }: TubeCurve): { readonly first: End; readonly last: End } => {
  const end = (here: number, inner: number): End => {
    const [powerPct = NaN, currentMa = NaN] = [x.at(here), y.at(here)];
    const [innerPct = NaN, innerMa = NaN] = [x.at(inner), y.at(inner)];
    return { powerPct, currentMa, maPerPct: (innerMa - currentMa) / (innerPct - powerPct) };
  };
  return { first: end(0, 1), last: end(-1, -2) };
};
