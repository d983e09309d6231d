import { inverseMills, logNormalCdf, normalPdf, normalQuantile } from '../../src/num/normal.ts';
import type { Trial } from './cellByCell.ts';
import { wantedShare, wantedSurePct } from './method.ts';

/** P(out) = Φ((mean − ln v)/sd). */
export interface ProbitLine {
  readonly mean: number;
  readonly sd: number;
}

/** Steepness 1/sd is looked for between these: scatter from 0.2 % to 500 %. */
const leastSteepness = 0.2;
const mostSteepness = 500;
const golden = (Math.sqrt(5) - 1) / 2;
const margin = normalQuantile(wantedShare);
/** Half the chi-square of one degree of freedom: a one-sided limit. */
const drop = normalQuantile(wantedSurePct / 100) ** 2 / 2;

/** Where a function of one hump is highest between two places, by golden section. */
const highestBetween = (
  low: number,
  high: number,
  height: (x: number) => number,
  steps = 45,
): readonly [place: number, height: number] => {
  let [a, b] = [low, high];
  let [c, d] = [b - golden * (b - a), a + golden * (b - a)];
  let [atC, atD] = [height(c), height(d)];
  for (let step = 0; step < steps; step += 1) {
    if (atC >= atD) {
      [b, d, atD] = [d, c, atC];
      c = b - golden * (b - a);
      atC = height(c);
    } else {
      [a, c, atC] = [c, d, atD];
      d = a + golden * (b - a);
      atD = height(d);
    }
  }
  return atC >= atD ? [c, atC] : [d, atD];
};

/**
 * Log likelihood, the steepness at its best, where the probability of coming out passes Φ(z) at `place`. η = z +
 * (place − ln v)·steepness is linear in the steepness, so there is one hump.
 */
const profileAt = (
  trials: readonly Trial[],
  place: number,
  z: number,
): readonly [lnSteepness: number, height: number] =>
  highestBetween(Math.log(leastSteepness), Math.log(mostSteepness), (lnSteepness) => {
    const steepness = Math.exp(lnSteepness);
    return trials.reduce((sum, { lnSpeed, out }) => {
      const eta = z + (place - lnSpeed) * steepness;
      return sum + logNormalCdf(out ? eta : -eta);
    }, 0);
  });

/** Whether out and not out overlap along the speeds: only then is there a finite estimate. */
export const overlap = (trials: readonly Trial[]): boolean => {
  const { slowestNot, fastestOut } = ends(trials);
  return fastestOut > slowestNot;
};

/** Fastest that came out and slowest that did not. */
export const ends = (
  trials: readonly Trial[],
): { readonly fastestOut: number; readonly slowestNot: number } => ({
  fastestOut: Math.max(...trials.filter(({ out }) => out).map(({ lnSpeed }) => lnSpeed)),
  slowestNot: Math.min(...trials.filter(({ out }) => !out).map(({ lnSpeed }) => lnSpeed)),
});

/**
 * Maximum likelihood; null without overlap. Newton's rule on η = a − b·(x − centre)/reach, in which the log likelihood is
 * concave; a step that does not climb is halved.
 */
export const fitLine = (trials: readonly Trial[]): ProbitLine | null => {
  if (!overlap(trials)) return null;
  const speeds = trials.map(({ lnSpeed }) => lnSpeed);
  const centre = (Math.min(...speeds) + Math.max(...speeds)) / 2;
  const reach = (Math.max(...speeds) - Math.min(...speeds)) / 2;
  const signs = trials.map(({ out }) => (out ? 1 : -1));
  const places = speeds.map((speed) => (speed - centre) / reach);
  const height = (a: number, b: number): number =>
    places.reduce((sum, x, i) => sum + logNormalCdf((signs[i] ?? 1) * (a - b * x)), 0);
  let [a, b] = [0, 1];
  let top = height(a, b);
  for (let step = 0; step < 60; step += 1) {
    let [pullA, pullB, aa, ab, bb] = [0, 0, 0, 0, 0];
    places.forEach((x, i) => {
      const sign = signs[i] ?? 1;
      const eta = sign * (a - b * x);
      const slope = inverseMills(eta);
      const bend = slope * (slope + eta);
      pullA += sign * slope;
      pullB -= sign * slope * x;
      aa += bend;
      ab -= bend * x;
      bb += bend * x * x;
    });
    const determinant = aa * bb - ab * ab;
    const stepA = (bb * pullA - ab * pullB) / determinant;
    const stepB = (aa * pullB - ab * pullA) / determinant;
    if (!Number.isFinite(stepA + stepB)) break;
    let length = 1;
    while (length > 1e-6 && !(height(a + length * stepA, b + length * stepB) >= top)) length /= 2;
    a += length * stepA;
    b += length * stepB;
    top = height(a, b);
    if (Math.hypot(stepA, stepB) < 1e-10) break;
  }
  // A fit that falls the wrong way or hardly at all says nothing of where the changeover is.
  return b > 0.02 ? { mean: centre + (a * reach) / b, sd: reach / b } : null;
};

/**
 * Lower limit by the likelihood ratio of ln speed that keeps the wanted share, as sure as wanted; null where the data set
 * none within `reach` of what was cut. There may be one without overlap: the likelihood then is highest as the scatter
 * goes to 0, but falls on the other side all the same. Neyer (1994) §5; Venzon & Moolgavkar (1988) Appl. Stat. 37:87.
 */
export const likelihoodRatioLimit = (trials: readonly Trial[], reach = 3): number | null => {
  const outs = trials.filter(({ out }) => out).length;
  if (outs === 0 || outs === trials.length) return null;
  const speeds = trials.map(({ lnSpeed }) => lnSpeed);
  const least = Math.min(...speeds) - reach;
  const height = (place: number): number => profileAt(trials, place, margin)[1];
  const [best, top] = highestBetween(least, Math.max(...speeds) + 1, height);
  if (height(least) > top - drop) return null;
  let [low, high] = [least, best];
  for (let step = 0; step < 40; step += 1) {
    const middle = (low + high) / 2;
    if (height(middle) < top - drop) low = middle;
    else high = middle;
  }
  return high;
};

/** Expected information about (mean, sd) of one cell at η, times sd²: w·(1, η)(1, η)ᵀ, w = φ²/(Φ·(1 − Φ)). */
export const weightAt = (eta: number): number =>
  Math.exp(2 * Math.log(normalPdf(eta)) - logNormalCdf(eta) - logNormalCdf(-eta));

/** Sums of w, w·η and w·η² over the cells cut: the information matrix times sd². */
export const information = (
  trials: readonly Trial[],
  { mean, sd }: ProbitLine,
): readonly [number, number, number] =>
  trials.reduce<readonly [number, number, number]>(
    ([a, b, c], { lnSpeed }) => {
      const eta = (mean - lnSpeed) / sd;
      const w = weightAt(eta);
      return [a + w, b + w * eta, c + w * eta * eta];
    },
    [0, 0, 0],
  );

/** The ln speed at which one more cell raises the determinant of the information most (Neyer 1994). */
export const dOptimalNext = (trials: readonly Trial[], line: ProbitLine): number => {
  const [a, b, c] = information(trials, line);
  let best = 0;
  let most = -Infinity;
  for (let i = -80; i <= 80; i += 1) {
    const eta = i / 20;
    const w = weightAt(eta);
    const determinant = (a + w) * (c + w * eta * eta) - (b + w * eta) ** 2;
    if (determinant > most) [best, most] = [eta, determinant];
  }
  return line.mean - best * line.sd;
};

/** A fitted line brought back to the range of what was cut, as Neyer and Wu & Tian do before they use it. */
export const withinReach = ({ mean, sd }: ProbitLine, trials: readonly Trial[]): ProbitLine => {
  const speeds = trials.map(({ lnSpeed }) => lnSpeed);
  const [low, high] = [Math.min(...speeds), Math.max(...speeds)];
  return {
    mean: Math.min(high, Math.max(low, mean)),
    sd: Math.min(sd, Math.max(1e-3, high - low)),
  };
};
