import { normalQuantile } from '../../src/num/normal.ts';
import { beforehand } from './beforehand.ts';
import { cellByCell, type Trial } from './cellByCell.ts';
import { wantedShare, wantedSurePct, type Method } from './method.ts';
import { fitLine, information } from './probitLine.ts';

/**
 * Where Langlie's rule puts the next cell (H. J. Langlie 1962, A reliability test method for "one-shot" items, Aeronutronic
 * U-1792; from memory): half-way between the last cell and the latest earlier one such that from there on out and not out
 * are equally many; without such a one, half-way to the limit on the side it has to go.
 */
export const langlieNext = (
  trials: readonly Trial[],
  [least, most]: readonly [number, number],
): number => {
  const last = trials.at(-1);
  if (last === undefined) return (least + most) / 2;
  let balance = 0;
  for (let i = trials.length - 1; i >= 0; i -= 1) {
    const trial = trials[i];
    if (trial === undefined) break;
    balance += trial.out ? 1 : -1;
    if (balance === 0) return (last.lnSpeed + trial.lnSpeed) / 2;
  }
  return (last.lnSpeed + (last.out ? most : least)) / 2;
};

/** Lower limit by the delta method from the expected information of mean and spread; null without an estimate. */
export const deltaLimit = (trials: readonly Trial[]): number | null => {
  const line = fitLine(trials);
  if (line === null) return null;
  const [a, b, c] = information(trials, line);
  const z = normalQuantile(wantedShare);
  // Scores are (1, −η)·…/sd in (mean, sd), so the information's mixed term is −b; the gradient of mean − z·sd is (1, −z).
  const variance = (line.sd ** 2 * (c - 2 * z * b + z * z * a)) / (a * c - b * b);
  const limit = line.mean - z * line.sd - normalQuantile(wantedSurePct / 100) * Math.sqrt(variance);
  return Number.isFinite(limit) ? limit : null;
};

/** Langlie's one-shot test between the guessed limits, by maximum likelihood. No answer without overlap. */
export const langlie: Method = {
  name: 'langlie',
  play: (shop, _random, limits) => {
    const { least, most } = beforehand(shop);
    const cut = cellByCell(shop);
    const trials: Trial[] = [];
    while (trials.length < limits.cellsAtMost) trials.push(cut(langlieNext(trials, [least, most])));
    const limit = deltaLimit(trials);
    return { speedMmPerS: limit === null ? null : Math.exp(limit) };
  },
};
