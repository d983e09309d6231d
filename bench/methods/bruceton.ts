import { normalQuantile } from '../../src/num/normal.ts';
import { dixonMood, type UpDownTrial } from '../../src/num/upAndDown.ts';
import { beforehand } from './beforehand.ts';
import { cellByCell } from './cellByCell.ts';
import { wantedShare, wantedSurePct, type Method } from './method.ts';

/**
 * Lower limit of the level below which the wanted share responds not (here: comes out), from Dixon & Mood's estimates
 * and their standard errors (1948, JASA 43:109, from memory): (6s + d)/(7√N) of the mean and (1.1s + 0.3s²/d)/√N of the
 * spread, N being the rarer response's count. Null where the formula for the spread does not hold.
 */
export const brucetonLimit = (trials: readonly UpDownTrial[], step: number): number | null => {
  const found = dixonMood(trials, { step, risesWithLevel: true });
  if (found === null || !found.sdFormulaHolds) return null;
  const { mean, sd } = found;
  const [n] = found.sums;
  const meanError = (6 * sd + step) / (7 * Math.sqrt(n));
  const sdError = (1.1 * sd + (0.3 * sd * sd) / step) / Math.sqrt(n);
  const z = normalQuantile(wantedShare);
  return mean - z * sd - normalQuantile(wantedSurePct / 100) * Math.hypot(meanError, z * sdError);
};

/** The up-and-down staircase with a step of the guessed scatter, from the guessed changeover. */
export const bruceton: Method = {
  name: 'bruceton',
  play: (shop, _random, limits) => {
    const { lnV50, sigma } = beforehand(shop);
    const cut = cellByCell(shop);
    const trials: UpDownTrial[] = [];
    let level = lnV50;
    for (let i = 0; i < limits.cellsAtMost; i += 1) {
      const { out } = cut(level);
      trials.push({ level, responded: !out });
      level += out ? sigma : -sigma;
    }
    const limit = brucetonLimit(trials, sigma);
    return { speedMmPerS: limit === null ? null : Math.exp(limit) };
  },
};
