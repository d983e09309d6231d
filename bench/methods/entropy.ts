import { priors } from '../../src/core/cutmodel/priors.ts';
import { normalCdf, normalQuantile } from '../../src/num/normal.ts';
import { weightedQuantile } from '../../src/num/weightedQuantile.ts';
import { beforehand } from './beforehand.ts';
import { cellByCell } from './cellByCell.ts';
import { wantedShare, wantedSurePct, type Method } from './method.ts';

/** The speeds and the changeovers share one lattice in ln speed, so that a table by their distance will do. */
const step = 0.012;
const half = 150;
const speedEvery = 3;
const scatters = 17;
const lapse = 0.02;

/** Entropy of an outcome of two, in nats. */
export const entropyOf = (p: number): number =>
  p <= 0 || p >= 1 ? 0 : -p * Math.log(p) - (1 - p) * Math.log1p(-p);

/**
 * Each cell where the expected entropy of the posterior is least: QUEST+ (Watson 2017, J. Vision 17(3):10) on a grid of
 * changeover and scatter with a lapse rate of 0.02, priors those of the model. Answer: the 5 % quantile of the speed that
 * keeps the share.
 */
export const entropy: Method = {
  name: 'entropy',
  play: (shop, _random, limits) => {
    const { lnV50, lnV50Sd } = beforehand(shop);
    const cut = cellByCell(shop);
    const { mean, sd } = priors.lnSigma;
    const zs = Array.from({ length: scatters }, (_, s) => (6 * s) / (scatters - 1) - 3);
    const sigmas = zs.map((z) => Math.exp(mean + sd * z));
    const places = 2 * half + 1;
    const weight = Float64Array.from({ length: places * scatters }, (_, k) => {
      const z = ((Math.floor(k / scatters) - half) * step) / lnV50Sd;
      return Math.exp(-0.5 * z * z - 0.5 * (zs[k % scatters] ?? 0) ** 2);
    });
    normalise(weight);
    const { probability, doubt } = tablesOf(sigmas);
    const shareAt = (speed: number, k: number): number =>
      probability[(Math.floor(k / scatters) - speed + 2 * half) * scatters + (k % scatters)] ?? 0;

    for (let i = 0; i < limits.cellsAtMost; i += 1) {
      let best = half;
      let most = -Infinity;
      const alive = weight.reduce<number[]>((kept, w, k) => {
        if (w > 1e-7) kept.push(k);
        return kept;
      }, []);
      for (let speed = 0; speed < places; speed += speedEvery) {
        let out = 0;
        let known = 0;
        for (const k of alive) {
          const at = (Math.floor(k / scatters) - speed + 2 * half) * scatters + (k % scatters);
          out += (weight[k] ?? 0) * (probability[at] ?? 0);
          known += (weight[k] ?? 0) * (doubt[at] ?? 0);
        }
        const gain = entropyOf(out) - known;
        if (gain > most) [best, most] = [speed, gain];
      }
      const trial = cut(lnV50 + (best - half) * step);
      // The typed speed is rounded: the nearest place of the lattice stands for it.
      const near = Math.round((trial.lnSpeed - lnV50) / step) + half;
      const at = Math.min(2 * half, Math.max(0, near));
      for (let k = 0; k < weight.length; k += 1) {
        const p = shareAt(at, k);
        weight[k] = (weight[k] ?? 0) * (trial.out ? p : 1 - p);
      }
      normalise(weight);
    }
    const z = normalQuantile(wantedShare);
    const fastest = Float64Array.from(
      weight,
      (_, k) => (Math.floor(k / scatters) - half) * step - z * (sigmas[k % scatters] ?? 0),
    );
    return {
      speedMmPerS: Math.exp(lnV50 + weightedQuantile(fastest, weight, 1 - wantedSurePct / 100)),
    };
  },
};

/** P(out) and its entropy by distance (changeover less speed, in steps) and scatter. */
const tablesOf = (sigmas: readonly number[]) => {
  const probability = Float64Array.from({ length: (4 * half + 1) * scatters }, (_, at) => {
    const distance = (Math.floor(at / scatters) - 2 * half) * step;
    return lapse / 2 + (1 - lapse) * normalCdf(distance / (sigmas[at % scatters] ?? 1));
  });
  return { probability, doubt: probability.map(entropyOf) };
};

const normalise = (weight: Float64Array): void => {
  const sum = weight.reduce((a, b) => a + b, 0);
  weight.forEach((w, k) => (weight[k] = w / sum));
};
