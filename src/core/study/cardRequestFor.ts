import type { CardRequest } from '../card/cardRequest.ts';
import type { CutStudy } from '../cutmodel/cutStudy.ts';
import type { FitAnswer } from '../cutmodel/fitAnswer.ts';
import { powerLimit } from '../machine/deliveredPower.ts';
import { answerWithEarlier } from './answerWithEarlier.ts';
import { believedChangeover } from './believedChangeover.ts';
import type { EarlierSheet } from './earlierSheet.ts';

/** What a person wishes of a card; whatever is left out is taken from the study or from common practice. */
export type CardWish = Partial<Omit<CardRequest, 'code' | 'thicknessMm' | 'machine' | 'believed'>> &
  Pick<CardRequest, 'code'>;

/** A piece of waste that most workshops have lying about. Common practice, no source. */
export const usualOffcutMm = [300, 200] as const;

/**
 * The request for a card that a study and a wish amount to: by default a ladder of about six speeds at the power that
 * the workshop runs, two stars each. `answer`: what is known so far; absent: what {@link answerToDesignBy} says.
 */
export const cardRequestFor = (
  study: CutStudy,
  wish: CardWish,
  answer: FitAnswer | undefined = answerToDesignBy(study),
): CardRequest => cardRequestKnowing(study, wish, answer);

/** The same with what is known so far, or nothing. */
export const cardRequestKnowing = (
  study: CutStudy,
  wish: CardWish,
  answer: FitAnswer | undefined,
): CardRequest => {
  const limit = powerLimit(study.machine);
  return {
    vary: 'speed',
    powerPct: Math.min(usualPowerPct(study), Math.max(1, Math.floor(limit.powerPct))),
    cellsEach: 2,
    shape: 'star',
    sizeMm: 14,
    sheetMm: usualOffcutMm,
    seed: 1,
    ...wish,
    thicknessMm: study.stock.thicknessMm,
    machine: study.machine,
    believed: believedChangeover(study, answer),
  };
};

/** What is known before a card is designed; nothing where neither this sheet nor an earlier one was read. ~0.1 s. */
export const answerToDesignBy = (
  study: CutStudy,
  earlier: readonly EarlierSheet[] = [],
): FitAnswer | undefined =>
  observed(study) || earlier.length > 0 ? answerWithEarlier(study, 'fastest', earlier) : undefined;

const observed = ({ cells, tallies, habit }: CutStudy): boolean =>
  cells.length > 0 || tallies.length > 0 || habit !== undefined;

/** What the workshop runs, as far as it said so; else a middling power. */
const usualPowerPct = ({ ask, habit, tallies, cells }: CutStudy): number => {
  const powers = cells.map(({ powerPct }) => powerPct).sort((a, b) => a - b);
  return (
    ask.powerPct ??
    tallies.at(-1)?.setting.powerPct ??
    habit?.powerPct ??
    powers[Math.floor(powers.length / 2)] ??
    30
  );
};
