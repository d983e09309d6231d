import type { CardWorth } from '../../../core/cost/cardWorth.ts';
import { counted, durationWords } from '../terms/figures.ts';

/** Whether another card pays. */
export const worthText = {
  parts: 'Parts still to cut',
  verdict: (worth: CardWorth, gainPct: number, parts: number): string => {
    const { savedSecondsAPart, savedSeconds, spentSeconds, paysFromParts, pays } = worth;
    const took = `Typing and cutting it takes about ${durationWords(spentSeconds)}`;
    if (paysFromParts === null) return `${took}, and nothing is gained: leave it.`;
    const saved = `${gainPct.toFixed(0)}\u202f% faster is ${durationWords(savedSecondsAPart)} a part, ${durationWords(savedSeconds)} on ${counted(parts, 'part')}.`;
    return pays
      ? `${saved} ${took}: cut it.`
      : `${saved} ${took}: leave it. It pays from about ${counted(rounded(paysFromParts), 'part')} on.`;
  },
  assumed: (perSetting: number, perCell: number, perCard: number): string =>
    `Taken for granted: ${durationWords(perSetting)} to type a setting, ${durationWords(perCell)} to cut and read a shape, ${durationWords(perCard)} for the sheet and the rest. Common practice, no source.`,
};

/** To two figures: an estimate. */
const rounded = (count: number): number => Number(count.toPrecision(2));
