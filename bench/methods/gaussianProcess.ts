import { normalCdf, normalQuantile } from '../../src/num/normal.ts';
import { beforehand, type Beforehand } from './beforehand.ts';
import { cellByCell, type Trial } from './cellByCell.ts';
import { entropyOf } from './entropy.ts';
import { laplaceProcess, type Kernel, type LaplaceProcess } from './laplaceProcess.ts';
import { wantedShare, wantedSurePct, type Method } from './method.ts';

const target = normalQuantile(wantedShare);
const sure = normalQuantile(wantedSurePct / 100);
const candidates = 121;

/**
 * About a falling line: its slope uncertain by `slopeSd`, a half of itself, and so its place by √5·`placeSd` times that;
 * with a smooth departure, as is usual for curves of this kind (Song, Garnett & Barbour 2017, J. Acoust. Soc. Am.
 * 141:2513). x is ln speed from the guessed changeover.
 */
const kernelOf =
  (slopeSd: number, departureSd: number, placeSd: number): Kernel =>
  (a, b) =>
    slopeSd ** 2 * (5 * placeSd ** 2 + a * b) +
    departureSd ** 2 * Math.exp(-((a - b) ** 2) / (2 * 0.2 ** 2)) +
    (a === b ? 1e-6 : 0);

/** Slopes on the probit scale, as multiples of the guessed one; each is uncertain by half of itself. */
const slopeFactors = [0.5, 1, 2];
const departures = [0.3, 1];

/** The process whose slope and departure have the most evidence. */
const bestProcess = (trials: readonly Trial[], told: Beforehand): LaplaceProcess | null => {
  const xs = trials.map(({ lnSpeed }) => lnSpeed - told.lnV50);
  const labels = trials.map(({ out }) => (out ? 1 : -1));
  let best: LaplaceProcess | null = null;
  for (const factor of slopeFactors) {
    const slope = factor / told.sigma;
    for (const departure of departures) {
      const kernel = kernelOf(slope / 2, departure, told.lnV50Sd);
      const process = laplaceProcess(xs, labels, kernel, (x) => -slope * x);
      if (process && process.logEvidence > (best?.logEvidence ?? -Infinity)) best = process;
    }
  }
  return best;
};

const steepest = Math.sqrt((Math.PI * Math.LN2) / 2);

/** What an outcome there would tell about the process, in bits: Houlsby et al. 2011, arXiv:1112.5745, equation 3. */
const informationFrom = ({ mean, sd }: { readonly mean: number; readonly sd: number }): number => {
  const wide = sd * sd + steepest * steepest;
  return (
    entropyOf(normalCdf(mean / Math.sqrt(1 + sd * sd))) / Math.LN2 -
    (steepest / Math.sqrt(wide)) * Math.exp((-mean * mean) / (2 * wide))
  );
};

/**
 * A Gaussian process through a probit, each cell where its outcome tells most about the process. Answer: the fastest
 * speed up to which the process is as sure as wanted that the share is kept.
 */
export const gaussianProcess: Method = {
  name: 'gauss-process',
  play: (shop, _random, limits) => {
    const told = beforehand(shop);
    const cut = cellByCell(shop);
    const xs = Array.from(
      { length: candidates },
      (_, i) => told.least - told.lnV50 + ((told.most - told.least) * i) / (candidates - 1),
    );
    const trials: Trial[] = [cut(told.lnV50)];
    while (trials.length < limits.cellsAtMost) {
      const process = bestProcess(trials, told);
      if (process === null) break;
      const doubts = xs.map((x) => informationFrom(process.at(x)));
      trials.push(cut(told.lnV50 + (xs[doubts.indexOf(Math.max(...doubts))] ?? 0)));
    }
    const process = bestProcess(trials, told);
    if (process === null || !trials.some(({ out }) => out) || trials.every(({ out }) => out)) {
      return { speedMmPerS: null };
    }
    const bounds = xs.map((x) => {
      const { mean, sd } = process.at(x);
      return mean - sure * sd - target;
    });
    let fastest = bounds.indexOf(Math.max(...bounds));
    if (!((bounds[fastest] ?? -1) >= 0)) return { speedMmPerS: null };
    while ((bounds[fastest + 1] ?? -1) >= 0) fastest += 1;
    return { speedMmPerS: Math.exp(told.lnV50 + (xs[fastest] ?? 0)) };
  },
};
