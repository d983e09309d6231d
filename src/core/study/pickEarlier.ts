import type { EarlierSheet } from './earlierSheet.ts';
import { shapesThatSay } from './historyOf.ts';

/**
 * The most that an answer leans on. Each sheet is one more unknown of the model: with six an answer takes 0.1 to 0.4 s
 * where it took 0.04, and settles; with twelve it takes seconds, and one in a dozen does not settle at all, while the
 * scatter is known little better (sd of ln σ .42 with none, .25 with five, .20 with twelve). Cells cost time by
 * the distinct setting. Orders teach flaws, and of scatter little: two leave room for four cards. A greater order than
 * that is passed over, since it travels to the model part by part.
 */
export const mostEarlier = { sheets: 6, orders: 2, cells: 200, partsOfAnOrder: 2000 } as const;

/** Sheets of this thickness or up to so many times thicker or thinner teach: the law of thickness is a local one. No source. */
export const mostTimesThicker = 2;

/** The sheets last read, whole, within the bounds of {@link mostEarlier}; what says nothing is left out. O(n log n). */
export const pickEarlier = (sheets: readonly EarlierSheet[]): readonly EarlierSheet[] => {
  const picked: EarlierSheet[] = [];
  let room: Record<EarlierSheet['of'], number> = {
    cards: mostEarlier.cells,
    order: mostEarlier.orders,
  };
  for (const sheet of [...sheets].sort(lastReadFirst)) {
    if (picked.length === mostEarlier.sheets) break;
    const shapes = shapesThatSay([sheet]);
    const takes = sheet.of === 'cards' ? shapes : 1;
    const tooGreat = sheet.of === 'order' && shapes > mostEarlier.partsOfAnOrder;
    if (shapes === 0 || tooGreat || takes > room[sheet.of]) continue;
    room = { ...room, [sheet.of]: room[sheet.of] - takes };
    picked.push(sheet);
  }
  return picked;
};

/** By name where the time is the same, so that the same store gives the same answer. */
const lastReadFirst = (a: EarlierSheet, b: EarlierSheet): number =>
  Date.parse(b.lastReadAt) - Date.parse(a.lastReadAt) || (nameOf(a) < nameOf(b) ? -1 : 1);

const nameOf = ({ batch, sheet, of }: EarlierSheet): string => `${batch}\u0000${sheet}\u0000${of}`;
