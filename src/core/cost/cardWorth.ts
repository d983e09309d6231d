import type { NextCardAnswer } from '../cutmodel/fitAnswer.ts';

/** What a card takes before it teaches anything. Common practice, no source: each workshop has its own. */
export interface CardEffort {
  /** To type one setting into the machine's control program. */
  readonly secondsPerSetting: number;
  /** To cut and read one cell. */
  readonly secondsPerCell: number;
  /** Once a card: to lay the offcut, set zero, run the outline, sweep up. */
  readonly secondsPerCard: number;
}

export const usualEffort: CardEffort = {
  secondsPerSetting: 30,
  secondsPerCell: 15,
  secondsPerCard: 300,
};

/** The order that lies ahead. */
export interface OrderAhead {
  readonly parts: number;
  /** Length of cut of one part. */
  readonly partLengthMm: number;
}

/** Whether a card pays in time. */
export interface CardWorth {
  readonly savedSecondsAPart: number;
  /** On the whole order. */
  readonly savedSeconds: number;
  readonly spentSeconds: number;
  /** From how many such parts on it pays; null where it is not expected to gain anything. */
  readonly paysFromParts: number | null;
  readonly pays: boolean;
}

/**
 * Sets the time that a card is expected to save on an order against the time it takes. A part of length L takes L/v; with a
 * gain g it takes L/(v(1 + g)). Null where nothing can be recommended yet: then the card is needed, whatever it takes.
 */
export const cardWorth = (
  { cells, settings, expectedGainPct, fastestNowMmPerS }: NextCardAnswer,
  { parts, partLengthMm }: OrderAhead,
  effort: CardEffort = usualEffort,
): CardWorth | null => {
  if (fastestNowMmPerS === null) return null;
  const gain = expectedGainPct / 100;
  const savedSecondsAPart = (partLengthMm / fastestNowMmPerS) * (gain / (1 + gain));
  const spentSeconds =
    effort.secondsPerCard +
    settings * effort.secondsPerSetting +
    cells.length * effort.secondsPerCell;
  const savedSeconds = parts * savedSecondsAPart;
  return {
    savedSecondsAPart,
    savedSeconds,
    spentSeconds,
    paysFromParts: savedSecondsAPart > 0 ? Math.ceil(spentSeconds / savedSecondsAPart) : null,
    pays: savedSeconds > spentSeconds,
  };
};

/** Of several cards the one that leaves most time on the order, be it lost time; the first of equals. */
export const mostWorth = <C extends NextCardAnswer>(
  cards: readonly C[],
  order: OrderAhead,
  effort: CardEffort = usualEffort,
): C | undefined => {
  const left = (card: C): number => {
    const worth = cardWorth(card, order, effort);
    return worth === null ? 0 : worth.savedSeconds - worth.spentSeconds;
  };
  return cards.reduce<C | undefined>(
    (best, card) => (best === undefined || left(card) > left(best) ? card : best),
    undefined,
  );
};
