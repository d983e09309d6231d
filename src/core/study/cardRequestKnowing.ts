import type { CardRequest } from '../card/cardRequest.ts';
import type { CutStudy } from '../cutmodel/cutStudy.ts';
import type { FitAnswer } from '../cutmodel/fitAnswer.ts';
import { powerLimit } from '../tube/deliveredPower.ts';
import { believedChangeover } from './believedChangeover.ts';

/** What a person wishes of a card; whatever is left out is taken from the study or from common practice. */
export type CardWish = Partial<Omit<CardRequest, 'code' | 'thicknessMm' | 'machine' | 'believed'>> &
  Pick<CardRequest, 'code'>;

/** A piece of waste that most workshops have lying about. Common practice, no source. */
export const usualOffcutMm = [300, 200] as const;

/** What a person's first card is cut from: it goes into a hand, and its picture onto a phone. Common practice, no source. */
export const handPieceMm = [100, 150] as const;

/** What a card is like where nobody says otherwise. */
export const usualCard = {
  vary: 'speed',
  cellsEach: 2,
  shape: 'star',
  sizeMm: 14,
  seed: 1,
} as const;

/**
 * The request for a card that a study and a wish amount to: by default a ladder of about six speeds at the power that
 * the workshop runs, two stars each. `answer`: what is known of the sheet so far, or nothing.
 */
export const cardRequestKnowing = (
  study: CutStudy,
  wish: CardWish,
  answer: FitAnswer | undefined,
): CardRequest => {
  const limit = powerLimit(study.machine);
  return {
    ...usualCard,
    powerPct: Math.min(usualPowerPct(study), Math.max(1, Math.floor(limit.powerPct))),
    sheetMm: usualOffcutMm,
    ...wish,
    thicknessMm: study.stock.thicknessMm,
    machine: study.machine,
    believed: believedChangeover(study, answer),
  };
};

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
