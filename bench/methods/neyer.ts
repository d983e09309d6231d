import { beforehand } from './beforehand.ts';
import { cellByCell, type Trial } from './cellByCell.ts';
import type { Method } from './method.ts';
import { dOptimalNext, ends, fitLine, likelihoodRatioLimit, withinReach } from './probitLine.ts';

/** What the rule is told, and what it has made of the scatter. */
export interface NeyerState {
  readonly least: number;
  readonly most: number;
  readonly sigmaGuess: number;
}

/**
 * Where the D-optimal sensitivity test puts the next cell (Neyer 1994, Technometrics 36:61): first outward until both
 * outcomes were seen; then half-way between them until the gap is below the guessed scatter, from there on D-optimal for
 * the guess, which shrinks by a fifth each time; once outcomes overlap, D-optimal for the estimate.
 */
export const neyerNext = (
  trials: readonly Trial[],
  { least, most, sigmaGuess }: NeyerState,
): { readonly lnSpeed: number; readonly sigmaGuess: number } => {
  if (trials.length === 0) return { lnSpeed: (least + most) / 2, sigmaGuess };
  const speeds = trials.map(({ lnSpeed }) => lnSpeed);
  const [slowest, fastest] = [Math.min(...speeds), Math.max(...speeds)];
  const { fastestOut, slowestNot } = ends(trials);
  if (slowestNot === Infinity) {
    const lnSpeed = Math.max((most + fastest) / 2, fastest + 2 * sigmaGuess, 2 * fastest - slowest);
    return { lnSpeed, sigmaGuess };
  }
  if (fastestOut === -Infinity) {
    const lnSpeed = Math.min(
      (least + slowest) / 2,
      slowest - 2 * sigmaGuess,
      2 * slowest - fastest,
    );
    return { lnSpeed, sigmaGuess };
  }
  const line = fitLine(trials);
  if (line !== null) {
    return { lnSpeed: dOptimalNext(trials, withinReach(line, trials)), sigmaGuess };
  }
  const middle = (fastestOut + slowestNot) / 2;
  if (slowestNot - fastestOut > sigmaGuess) return { lnSpeed: middle, sigmaGuess };
  return {
    lnSpeed: dOptimalNext(trials, { mean: middle, sd: sigmaGuess }),
    sigmaGuess: 0.8 * sigmaGuess,
  };
};

/** Neyer's sequence, its limit by the likelihood ratio. */
export const neyer: Method = {
  name: 'neyer',
  play: (shop, _random, limits) => {
    const { least, most, sigma } = beforehand(shop);
    const cut = cellByCell(shop);
    const trials: Trial[] = [];
    let sigmaGuess = sigma;
    while (trials.length < limits.cellsAtMost) {
      const next = neyerNext(trials, { least, most, sigmaGuess });
      sigmaGuess = next.sigmaGuess;
      trials.push(cut(next.lnSpeed));
    }
    const limit = likelihoodRatioLimit(trials);
    return { speedMmPerS: limit === null ? null : Math.exp(limit) };
  },
};
