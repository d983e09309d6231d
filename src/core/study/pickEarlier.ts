import type { EarlierSheet } from './earlierSheet.ts';
import { shapesThatSay } from './historyOf.ts';

/**
 * The most that stand in the model itself. Each sheet is one more unknown of it: with six an answer takes 0.1 to 0.4 s
 * where it took 0.04, and settles; with twelve it takes seconds, and one in a dozen does not settle at all. Cells cost time
 * by the distinct setting. Orders teach flaws, and of scatter little: two leave room for four cards. A greater order than
 * that is passed over, since it travels to the model part by part.
 */
export const mostInModel = { sheets: 6, orders: 2, cells: 200, partsOfAnOrder: 2000 } as const;

/** The most sheets beyond these: what they taught comes in as beliefs (`beliefsAfter`), ~10 ms a sheet, once. */
export const mostOlder = { sheets: 24, cells: 600 } as const;

/** Sheets of this thickness or up to so many times thicker or thinner teach: the law of thickness is a local one. No source. */
export const mostTimesThicker = 2;

/** The sheets last read, whole, within both bounds, the newest first; what says nothing is left out. O(n log n). */
export const pickEarlier = (sheets: readonly EarlierSheet[]): readonly EarlierSheet[] => {
  const sorted = [...sheets].sort(lastReadFirst);
  const { inModel, older } = splitEarlier(sorted);
  const picked = new Set(inModel);
  let cells: number = mostOlder.cells;
  for (const sheet of older) {
    if (picked.size === inModel.length + mostOlder.sheets) break;
    const takes = sheet.of === 'cards' ? shapesThatSay([sheet]) : 1;
    if (takes > cells) continue;
    cells -= takes;
    picked.add(sheet);
  }
  return sorted.filter((sheet) => picked.has(sheet));
};

/** Picked sheets, newest first: which stand in the model itself, and which are the older that say something. */
export const splitEarlier = (
  sheets: readonly EarlierSheet[],
): { readonly inModel: readonly EarlierSheet[]; readonly older: readonly EarlierSheet[] } => {
  const inModel: EarlierSheet[] = [];
  const older: EarlierSheet[] = [];
  let room: Record<EarlierSheet['of'], number> = {
    cards: mostInModel.cells,
    order: mostInModel.orders,
  };
  for (const sheet of sheets) {
    const shapes = shapesThatSay([sheet]);
    const tooGreat = sheet.of === 'order' && shapes > mostInModel.partsOfAnOrder;
    if (shapes === 0 || tooGreat) continue;
    const takes = sheet.of === 'cards' ? shapes : 1;
    const isFormer = sheet.beforeChange === true;
    if (isFormer || inModel.length === mostInModel.sheets || takes > room[sheet.of]) {
      older.push(sheet);
      continue;
    }
    room = { ...room, [sheet.of]: room[sheet.of] - takes };
    inModel.push(sheet);
  }
  return { inModel, older };
};

/** By name where the time is the same, so that the same store gives the same answer. */
const lastReadFirst = (a: EarlierSheet, b: EarlierSheet): number =>
  Date.parse(b.lastReadAt) - Date.parse(a.lastReadAt) || (nameOf(a) < nameOf(b) ? -1 : 1);

const nameOf = ({ batch, sheet, of }: EarlierSheet): string => `${batch}\u0000${sheet}\u0000${of}`;
