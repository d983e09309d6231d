import type { StudyCell } from '../cutmodel/cutStudy.ts';
import { oncePerObject } from '../oncePerObject.ts';
import { grades } from '../reading/grade.ts';
import { stockThicknessMm } from '../stock/stockThickness.ts';
import { batchOf as batchInModel } from './sinceChange.ts';
import type { RecordedTally, Study } from './study.ts';
import { cellOrigins, toCutStudy } from './toCutStudy.ts';

/** Shapes of an earlier sheet that were cut alike and ended alike. */
export interface EarlierCut {
  readonly cell: Omit<StudyCell, 'batch' | 'sheet'> & { readonly thicknessMm: number };
  readonly count: number;
}

/** What another study knows of one sheet: its cards' read cells, or the count of an order. */
export interface EarlierSheet {
  readonly of: 'cards' | 'order';
  /** Study and batch in one name: batches of different studies never mix, whatever they are called. */
  readonly batch: string;
  readonly sheet: string;
  /** ISO 8601, UTC. */
  readonly lastReadAt: string;
  /** Something was changed on the machine since: it teaches scatter, and nothing of where the changeover lies. */
  readonly beforeChange?: true;
  readonly cuts: readonly EarlierCut[];
}

/**
 * Every sheet of a study of which something was read, in no order. Cells of one batch and sheet are one sheet, whichever
 * card they stand on; an order that names no sheet is a sheet of its own. Spoilt cells keep their reasons. O(events + cells),
 * once a study: every kept setting of a book looks through the same ones.
 */
export const earlierSheetsOf = oncePerObject((study: Study): readonly EarlierSheet[] => [
  ...sheetsOfCards(study),
  ...study.tallies.flatMap((tally) => sheetOfOrder(study, tally)),
]);

const batchOf = ({ id }: Study, batch = ''): string => `${id}/${batch}`;

const sheetsOfCards = (study: Study): readonly EarlierSheet[] => {
  const { cells, stock } = toCutStudy(study);
  const origins = cellOrigins(study);
  const readAt = new Map<string, string>();
  for (const { cardCode, at } of study.events)
    readAt.set(cardCode, later(readAt.get(cardCode), at));
  const sheets = new Map<string, EarlierSheet>();
  cells.forEach(({ batch: ownBatch, sheet: ownSheet, ...cell }, i) => {
    const batch = batchOf(study, ownBatch);
    const sheet = ownSheet ?? '';
    const key = `${batch}\u0000${sheet}`;
    const before = sheets.get(key);
    sheets.set(key, {
      of: 'cards',
      batch,
      sheet,
      lastReadAt: later(before?.lastReadAt, readAt.get(origins[i]?.cardCode ?? '') ?? ''),
      cuts: withOneMore(before?.cuts ?? [], { thicknessMm: stock.thicknessMm, ...cell }),
    });
  });
  return [...sheets.values()];
};

/** ISO times of one zone and shape stand in the order of their letters. */
const later = (one = '', other: string): string => (one > other ? one : other);

const withOneMore = (
  cuts: readonly EarlierCut[],
  cell: EarlierCut['cell'],
): readonly EarlierCut[] => {
  const key = JSON.stringify(cell);
  const at = cuts.findIndex((cut) => JSON.stringify(cut.cell) === key);
  return at < 0
    ? [...cuts, { cell, count: 1 }]
    : cuts.map((cut, i) => (i === at ? { ...cut, count: cut.count + 1 } : cut));
};

/** Parts lost to a pocket or a knot: nobody noted which, and the two count alike. */
const sheetOfOrder = (study: Study, tally: RecordedTally): readonly EarlierSheet[] => {
  const cut = {
    ...tally.setting,
    thicknessMm: stockThicknessMm(study.stock),
    shapeLengthMm: tally.partLengthMm,
  };
  const counts: readonly EarlierCut[] = [
    ...grades.map((grade) => ({ cell: { ...cut, grade }, count: tally[grade] })),
    { cell: { ...cut, spoilt: 'glue-pocket' }, count: tally.spoilt },
  ];
  const cuts = counts.filter(({ count }) => count > 0);
  const batch = batchOf(study, batchInModel(study, tally.batch, tally.at).batch);
  const sheet = tally.sheet ?? `order ${tally.id}`;
  return cuts.length === 0 ? [] : [{ of: 'order', batch, sheet, lastReadAt: tally.at, cuts }];
};
