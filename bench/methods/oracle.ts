import { links } from '../../src/core/cutmodel/links.ts';
import { marginalShare } from '../../src/core/cutmodel/marginalShare.ts';
import type { Grade } from '../../src/core/reading/grade.ts';
import { weightedQuantile } from '../../src/num/weightedQuantile.ts';
import type { TruthForTheBound } from '../workshop.ts';
import { beforehand } from './beforehand.ts';
import { cellByCell } from './cellByCell.ts';
import { wantedShare, wantedSurePct, type Method } from './method.ts';

const step = 0.006;
const half = 350;
const speedEvery = 2;
const grades: readonly Grade[] = ['out', 'hangs', 'stays'];

/**
 * The bound: told link, scatter, sheet scatter, hanging band, flaws and misreading, it learns only where the changeover
 * is, from the prior that all methods share. It cuts one cell a card, each where the grade tells most about the changeover
 * (which is best for one more cell, not for all of them together), and answers with the 5 % quantile of the speed that
 * keeps the share. No answer in a workshop that tells no truth.
 */
export const oracle: Method = {
  name: 'oracle',
  isTold: true,
  play: (shop, _random, limits) => {
    const { truth } = shop;
    if (truth === undefined) return { speedMmPerS: null };
    const { lnV50, lnV50Sd } = beforehand(shop);
    const cut = cellByCell(shop);
    const places = 2 * half + 1;
    const weight = Float64Array.from({ length: places }, (_, i) =>
      Math.exp(-0.5 * (((i - half) * step) / lnV50Sd) ** 2),
    );
    normalise(weight);
    // By distance (changeover less speed) and grade; the two are on one lattice.
    const table = Float64Array.from({ length: 3 * (2 * places - 1) }, (_, at) => {
      const margin = (Math.floor(at / 3) - (places - 1)) * step;
      return gradeShares(truth, margin)[at % 3] ?? 0;
    });
    const doubt = Float64Array.from({ length: 2 * places - 1 }, (_, d) =>
      entropyOf([0, 1, 2].map((g) => table[3 * d + g] ?? 0)),
    );
    for (let i = 0; i < limits.cellsAtMost; i += 1) {
      let best = half;
      let most = -Infinity;
      for (let speed = 0; speed < places; speed += speedEvery) {
        const shares = [0, 0, 0];
        let known = 0;
        for (let k = 0; k < places; k += 1) {
          const w = weight[k] ?? 0;
          if (w < 1e-8) continue;
          const d = k - speed + places - 1;
          for (let g = 0; g < 3; g += 1) shares[g] = (shares[g] ?? 0) + w * (table[3 * d + g] ?? 0);
          known += w * (doubt[d] ?? 0);
        }
        const gain = entropyOf(shares) - known;
        if (gain > most) [best, most] = [speed, gain];
      }
      const { lnSpeed, grade } = cut(lnV50 + (best - half) * step);
      const at = grades.indexOf(grade);
      for (let k = 0; k < places; k += 1) {
        const margin = lnV50 + (k - half) * step - lnSpeed;
        weight[k] = (weight[k] ?? 0) * (gradeShares(truth, margin)[at] ?? 0);
      }
      normalise(weight);
    }
    const changeovers = Float64Array.from(weight, (_, k) => lnV50 + (k - half) * step);
    const surely = weightedQuantile(changeovers, weight, 1 - wantedSurePct / 100);
    return { speedMmPerS: Math.exp(surely - marginKeeping(truth)) };
  },
};

/** Shares of out, hangs and stays at a margin in ln speed, over sheets, flaws and misreading. */
export const gradeShares = (truth: TruthForTheBound, margin: number): readonly number[] => {
  const link = linkOf(truth);
  const out = marginalShare(link, margin, truth.sigma, truth.sheetSd, 1);
  const through = marginalShare(link, margin + truth.hangBand, truth.sigma, truth.sheetSd, 1);
  const { flawShare, misreadShare } = truth;
  const sound = 1 - flawShare;
  return [
    sound * out,
    sound * (through - out) + flawShare / 2,
    sound * (1 - through) + flawShare / 2,
  ].map((share) => share * (1 - 1.5 * misreadShare) + misreadShare / 2);
};

/** The margin at which the wanted share of sound shapes comes out, by bisection. */
export const marginKeeping = (truth: TruthForTheBound): number => {
  let [low, high] = [0, 100 * truth.sigma];
  for (let i = 0; i < 50; i += 1) {
    const middle = (low + high) / 2;
    if (marginalShare(linkOf(truth), middle, truth.sigma, truth.sheetSd, 1) < wantedShare)
      low = middle;
    else high = middle;
  }
  return high;
};

const linkOf = ({ link }: TruthForTheBound) => {
  const found = links.find(({ name }) => name === link);
  if (found === undefined) throw new Error(`no link ${link}`);
  return found;
};

const entropyOf = (shares: readonly number[]): number =>
  shares.reduce((sum, p) => (p > 0 ? sum - p * Math.log(p) : sum), 0);

const normalise = (weight: Float64Array): void => {
  const sum = weight.reduce((a, b) => a + b, 0);
  weight.forEach((w, k) => (weight[k] = w / sum));
};
