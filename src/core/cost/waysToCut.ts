import { pointForAim } from '../cutmodel/aims.ts';
import type { FitAnswer, LinePoint } from '../cutmodel/fitAnswer.ts';
import type { Machine } from '../machine/machine.ts';
import { isPowerReached, isReached, type Reach } from '../cutmodel/reach.ts';
import type { WayToCut } from './partCost.ts';

/** A way to cut with the setting that it is. */
export interface PricedWay extends WayToCut {
  readonly kind: 'gentle' | 'chosen' | 'hard';
  readonly powerPct: number;
  readonly speedMmPerS: number;
  /** Outside what was cut. */
  readonly isGuess: boolean;
}

/**
 * Gentle-and-slow, what is recommended, and hard-and-fast, of the settings that keep the promise; equal ones once. All keep
 * the same promise, so the same share is taken to need a knife. Time is that of the cut alone. Gentler and harder are looked
 * for among the powers that were cut: what lies beyond nobody knows the price of.
 */
export const waysToCut = (
  answer: FitAnswer,
  machine: Machine,
  partLengthMm: number,
  reach: Reach,
): readonly PricedWay[] => {
  const { recommended, line } = answer;
  if (recommended === null) return [];
  const knifeShare = 1 - recommended.outOf100Mean / 100;
  const priced = (
    kind: PricedWay['kind'],
    { powerPct, speedMmPerS, currentMa }: LinePoint,
  ): PricedWay => ({
    kind,
    powerPct,
    speedMmPerS,
    isGuess: !isReached(reach, { powerPct, speedMmPerS, passes: recommended.passes }),
    seconds: (partLengthMm * recommended.passes) / speedMmPerS,
    shareOfRated:
      currentMa === undefined || machine.ratedCurrentMa === undefined
        ? powerPct / 100
        : currentMa / machine.ratedCurrentMa,
    knifeShare,
  });
  const tried = line.filter(({ powerPct }) => isPowerReached(reach, powerPct));
  const gentle = pointForAim(tried, 'gentlest');
  const hard = pointForAim(tried, 'fastest');
  const chosen = line.find((point) => point.powerPct === recommended.powerPct) ?? recommended;
  const ways = [
    ...(gentle ? [priced('gentle', gentle)] : []),
    priced('chosen', { ...chosen, speedMmPerS: recommended.speedMmPerS }),
    ...(hard ? [priced('hard', hard)] : []),
  ];
  return ways.filter(
    (way) =>
      way.kind === 'chosen' ||
      way.powerPct !== recommended.powerPct ||
      way.speedMmPerS !== recommended.speedMmPerS,
  );
};
