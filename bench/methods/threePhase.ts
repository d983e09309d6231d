import { normalCdf, normalPdf, normalQuantile } from '../../src/num/normal.ts';
import { beforehand } from './beforehand.ts';
import { cellByCell, type Trial } from './cellByCell.ts';
import { wantedShare, type Method } from './method.ts';
import {
  dOptimalNext,
  ends,
  fitLine,
  information,
  likelihoodRatioLimit,
  withinReach,
} from './probitLine.ts';

/**
 * Search, estimate, approximate: the three-phase sequential design of Wu & Tian (2014), J. Stat. Plan. Inference 149:1
 * (rules of the first phase from memory). x = ln v; a response is "not out", which rises with x. The last phase walks to
 * the wanted quantile by Joseph's version of Robbins and Monro (2004, Biometrika 91:461). The limit is the likelihood
 * ratio's over all cells, and never faster than where the walk ended.
 */
export const threePhase: Method = {
  name: 'three-phase',
  play: (shop, _random, limits) => {
    const { least, most, sigma } = beforehand(shop);
    const cutAt = cellByCell(shop);
    const trials: Trial[] = [];
    const left = (): number => limits.cellsAtMost - trials.length;
    const cut = (lnSpeed: number): boolean => {
      const trial = cutAt(lnSpeed);
      trials.push(trial);
      return trial.out;
    };
    const walk = Math.floor(limits.cellsAtMost / 4);
    const room = (): boolean => left() > walk;

    findBothSides(cut, room, [least, most], sigma);
    findOverlap(cut, room, trials, sigma);
    while (room()) {
      const line = fitLine(trials);
      if (line === null) break;
      cut(dOptimalNext(trials, withinReach(line, trials)));
    }
    const walked = walkToQuantile(cut, left, trials);
    const limit = likelihoodRatioLimit(trials);
    if (limit === null) return { speedMmPerS: null };
    return { speedMmPerS: Math.exp(walked === null ? limit : Math.min(limit, walked)) };
  },
};

type Cut = (lnSpeed: number) => boolean;

/** I1: a quarter in from either end of the guessed range, then outward until one end comes out and the other does not. */
const findBothSides = (
  cut: Cut,
  room: () => boolean,
  [least, most]: readonly [number, number],
  sigma: number,
): void => {
  const slowOut = cut(0.75 * least + 0.25 * most);
  const fastOut = cut(0.25 * least + 0.75 * most);
  if (slowOut && !fastOut) return;
  if (!slowOut && fastOut) {
    cut(least - 3 * sigma);
    cut(most + 3 * sigma);
    return;
  }
  let steps = 1.5 * sigma;
  while (room()) {
    if (cut(slowOut ? most + steps : least - steps) !== slowOut) return;
    steps *= 2;
  }
};

/** I2 and I3: halve the gap, then look 0.3 σ beyond it with a shrinking guess until outcomes overlap; then steady that. */
const findOverlap = (
  cut: Cut,
  room: () => boolean,
  trials: readonly Trial[],
  guess: number,
): void => {
  let sigma = guess;
  while (room()) {
    const { fastestOut, slowestNot } = ends(trials);
    if (fastestOut === -Infinity || slowestNot === Infinity) return;
    if (fastestOut > slowestNot) {
      const middle = (fastestOut + slowestNot) / 2;
      if (fastestOut - slowestNot >= sigma) cut(middle);
      else {
        cut(middle - sigma / 2);
        if (room()) cut(middle + sigma / 2);
      }
      return;
    }
    if (slowestNot - fastestOut >= 1.5 * sigma) {
      cut((fastestOut + slowestNot) / 2);
      continue;
    }
    const outs = trials.filter(({ out }) => out).length;
    const beyond = [slowestNot + 0.3 * sigma, fastestOut - 0.3 * sigma] as const;
    const order = outs > trials.length - outs ? beyond : ([beyond[1], beyond[0]] as const);
    for (const place of order) {
      if (!room()) return;
      const overlaps = cut(place) === place > slowestNot;
      if (overlaps) break;
    }
    sigma *= 2 / 3;
  }
};

/** III: from the fitted quantile with the variance of that estimate; null where nothing can be fitted. */
const walkToQuantile = (cut: Cut, left: () => number, trials: readonly Trial[]): number | null => {
  const fitted = fitLine(trials);
  if (fitted === null) {
    // Nothing to walk to: the cells are spent half-way between the outcomes instead.
    while (left() > 0) {
      const { fastestOut, slowestNot } = ends(trials);
      if (!Number.isFinite(fastestOut + slowestNot)) return null;
      cut((fastestOut + slowestNot) / 2);
    }
    return null;
  }
  const line = withinReach(fitted, trials);
  const z = normalQuantile(wantedShare);
  const [a, b, c] = information(trials, line);
  let variance = (line.sd ** 2 * (c - 2 * z * b + z * z * a)) / (a * c - b * b);
  let place = line.mean - z * line.sd;
  while (left() > 0) {
    const step = josephStep(1 - wantedShare, 1 / line.sd, variance);
    place -= step.gain * ((cut(place) ? 0 : 1) - step.expected);
    variance = step.variance;
  }
  return place;
};

/**
 * One step of Joseph (2004) towards the p-quantile: x ← x − gain·(y − expected), where y is 1 for a response and β the
 * slope of the response on the probit scale at the quantile.
 */
export const josephStep = (
  p: number,
  beta: number,
  variance: number,
): { readonly gain: number; readonly expected: number; readonly variance: number } => {
  const spread = Math.sqrt(1 + beta * beta * variance);
  const level = normalQuantile(p) / spread;
  const expected = normalCdf(level);
  const gain = (beta * variance * normalPdf(level)) / (spread * expected * (1 - expected));
  return { gain, expected, variance: variance - expected * (1 - expected) * gain * gain };
};
