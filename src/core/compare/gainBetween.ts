import { weightedQuantiles } from '../../num/weightedQuantile.ts';
import type { EffectBetween } from './effectBetween.ts';

/** By how much the other condition lets cut faster than the one, in per cent of speed; a loss is below 0. */
export interface GainBetween {
  /** Middle of what is known, and the interval that holds 95 in 100 of it. */
  readonly gainPct: { readonly middle: number; readonly low: number; readonly high: number };
  /** Probabilities that the other gains more than what is worth having, that it loses more, and that it does neither. */
  readonly chances: { readonly gains: number; readonly loses: number; readonly neither: number };
}

/** What the posterior of the effect says, in per cent. O(n log n) in its points. */
export const gainBetween = (
  { posterior, effect }: Pick<EffectBetween, 'posterior' | 'effect'>,
  worthPct: number,
): GainBetween => {
  const [low = NaN, middle = NaN, high = NaN] = weightedQuantiles(
    effect,
    posterior.weight,
    [0.025, 0.5, 0.975],
  ).map((lnGain) => 100 * Math.expm1(lnGain));
  const worth = Math.log(1 + worthPct / 100);
  const chanceThat = (holds: (lnGain: number) => boolean): number =>
    effect.reduce(
      (sum, lnGain, i) => (holds(lnGain) ? sum + (posterior.weight[i] ?? NaN) : sum),
      0,
    );
  const gains = chanceThat((lnGain) => lnGain > worth);
  const loses = chanceThat((lnGain) => lnGain < -worth);
  return {
    gainPct: { middle, low, high },
    chances: { gains, loses, neither: Math.max(0, 1 - gains - loses) },
  };
};
