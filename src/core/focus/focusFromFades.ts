import { fQuantile, tQuantile } from '../../num/distributions.ts';
import { done, refused, type Outcome, type ProblemOf } from '../problem.ts';
import type { FocusCode } from '../problems/focus.ts';
import { gapAtMm, sineOf, type FocusRamp } from './focusRamp.ts';
import type { FadedLine, FocusEstimate, Interval } from './focusTest.ts';

/**
 * How closely a person sees where a line fades out, mm along the strip (standard deviation), and how many readings that
 * belief is worth. Common practice, no source.
 */
const believed = { sdMm: 2, degrees: 3 } as const;

/** A line that faded on both sides. */
interface WholeLine extends FadedLine {
  readonly fromMm: number;
  readonly toMm: number;
}

/**
 * The focus lies in the middle between a line's two ends: the beam opens alike to both sides. Several lines of different
 * doses fade at different places about the same middle; their spread, together with what is usual, tells how sure it is.
 * Refuses where no line faded on both sides, and says to which side the ramp missed.
 */
export const focusFromFades = (
  ramp: FocusRamp,
  lines: readonly FadedLine[],
): Outcome<FocusEstimate> => {
  const off = lines
    .flatMap(({ fromMm, toMm }) => [fromMm, toMm])
    .find((mm) => mm !== null && !(mm >= 0 && mm <= ramp.lengthMm));
  if (off !== undefined)
    return refused('focus-reading-off-strip', { alongMm: off ?? 0, lengthMm: ramp.lengthMm });
  const whole = lines.filter(isWhole);
  if (whole.length === 0) return missed(ramp, lines);
  const middles = whole.map(({ fromMm, toMm }) => (fromMm + toMm) / 2);
  const { mean, squares, degrees } = spreadOf(middles);
  const pooled = believed.degrees + degrees;
  const usual = believed.sdMm ** 2 / 2;
  const sd = Math.sqrt((believed.degrees * usual + squares) / pooled / whole.length);
  const reach = tQuantile(0.975, pooled) * sd;
  const rayleighMm = rayleighFrom(whole, ramp);
  const disagree =
    degrees > 0 && squares / degrees / usual > fQuantile(0.99, degrees, believed.degrees);
  const remarks: readonly ProblemOf<FocusCode>[] = [
    ...(disagree ? [{ code: 'focus-lines-disagree' as const, params: {} }] : []),
    ...(rayleighMm === null ? [{ code: 'focus-depth-unknown' as const, params: {} }] : []),
  ];
  return done({
    alongMm: { value: mean, low: mean - reach, high: mean + reach },
    gapMm: {
      value: gapAtMm(ramp, mean),
      low: gapAtMm(ramp, mean + reach),
      high: gapAtMm(ramp, mean - reach),
    },
    rayleighMm,
    remarks,
  });
};

const isWhole = (line: FadedLine): line is WholeLine =>
  line.fromMm !== null && line.toMm !== null && line.fromMm < line.toMm;

const spreadOf = (values: readonly number[]) => {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, squares, degrees: values.length - 1 };
};

const missed = (ramp: FocusRamp, lines: readonly FadedLine[]): Outcome<never> => {
  const fadesLow = lines.flatMap(({ fromMm, toMm }) =>
    fromMm !== null && toMm === null ? [fromMm] : [],
  );
  const fadesHigh = lines.flatMap(({ fromMm, toMm }) =>
    fromMm === null && toMm !== null ? [toMm] : [],
  );
  if (lines.length === 0 || fadesLow.length + fadesHigh.length === 0)
    return lines.length === 0
      ? refused('focus-readings-too-few')
      : refused('focus-line-never-fades');
  if (fadesLow.length >= fadesHigh.length)
    return refused('focus-beyond-high-end', {
      alongMm: Math.round((Math.max(...fadesLow) + ramp.lengthMm) / 2),
    });
  return refused('focus-beyond-low-end', { alongMm: Math.round(Math.min(...fadesHigh) / 2) });
};

/** Twice the usual scatter and a half: it is believed, not told from the readings. */
const normalReach = 2.5;
/** An upper bound more than so many times the lower says too little to be shown. */
const widestRatio = 4;

/**
 * The dose at the middle of a line goes with 1/w, and a line fades where it falls to the threshold: so at a half-span h,
 * 1 + (h/zR)² goes with the square of the line's dose, and h² = zR²·(c·dose² − 1) is a straight line whose intercept is
 * −zR². By weighted least squares with the scatter that is usual for a fading end. Null with fewer than two doses, or
 * where the intercept says nothing.
 */
const rayleighFrom = (lines: readonly WholeLine[], ramp: FocusRamp): Interval | null => {
  const sine = sineOf(ramp);
  const points = lines.flatMap(({ dose, fromMm, toMm }) =>
    dose === undefined ? [] : [{ x: dose * dose, half: (sine * (toMm - fromMm)) / 2 }],
  );
  if (new Set(points.map(({ x }) => x)).size < 2) return null;
  const sdHalf = (believed.sdMm * sine) / Math.SQRT2;
  const weights = points.map(({ half }) => (2 * half * sdHalf) ** -2);
  const sum = (of: (i: number) => number): number =>
    weights.reduce((total, weight, i) => total + weight * of(i), 0);
  const x = (i: number): number => points[i]?.x ?? NaN;
  const y = (i: number): number => (points[i]?.half ?? NaN) ** 2;
  const [s, sx, sy, sxx, sxy] = [
    sum(() => 1),
    sum(x),
    sum(y),
    sum((i) => x(i) ** 2),
    sum((i) => x(i) * y(i)),
  ];
  const determinant = s * sxx - sx * sx;
  const intercept = (sxx * sy - sx * sxy) / determinant;
  const reach = normalReach * Math.sqrt(sxx / determinant);
  const [least, most] = [-(intercept + reach), -(intercept - reach)];
  if (!(least > 0) || Math.sqrt(most / least) > widestRatio) return null;
  return { value: Math.sqrt(-intercept), low: Math.sqrt(least), high: Math.sqrt(most) };
};
