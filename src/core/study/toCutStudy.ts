import type { Card } from '../card/card.ts';
import { sheetOfCard } from '../card/sheetOfCard.ts';
import type { CutStudy, StudyCell } from '../cutmodel/cutStudy.ts';
import { readCard } from '../reading/readCard.ts';
import type { CellAsRead } from '../reading/readingEvent.ts';
import { namedMaterial } from '../stock/namedMaterial.ts';
import { stockThicknessMm } from '../stock/stockThickness.ts';
import { promiseOf } from './promiseOf.ts';
import { batchOf, cutAt, sinceChange } from './sinceChange.ts';
import type { RecordedTally, Study } from './study.ts';

/** Where a cell of the cut study came from. */
export interface CellOrigin {
  readonly cardCode: string;
  readonly cell: string;
}

/**
 * What the cut model sees of a study: every graded or spoilt cell of every card as it was cut, the tallies and the
 * habit. A card that names no sheet is a sheet of its own. Unread cells are left out. What was cut before something was
 * changed on the machine is of another batch than what was cut since.
 */
export const toCutStudy = (study: Study): CutStudy => ({
  ...sinceChange(study),
  machine: study.machine,
  stock: { ...namedMaterial(study.stock), thicknessMm: stockThicknessMm(study.stock) },
  cells: cellsOf(study),
  tallies: study.tallies.map((tally) => ({
    ...toTally(tally),
    ...batchOf(study, tally.batch, tally.at),
  })),
  ...(study.habit === undefined ? {} : { habit: study.habit }),
  promise: promiseOf(study),
  ask: study.ask,
});

/** The origins of the cut study's cells, index by index: a remark on cell 3 is a remark on `cellOrigins(study)[3]`. */
export const cellOrigins = (study: Study): readonly CellOrigin[] =>
  readCells(study).map(({ card, cell }) => ({ cardCode: card.code, cell: cell.id }));

/** When a card was cut is looked for once a card: a search for each of its cells would cost their number squared. */
const cellsOf = (study: Study): CutStudy['cells'] =>
  study.cards.flatMap((card) => {
    // When it was cut matters where something was changed since, and is looked for only there.
    const at = study.machineChanges.length === 0 ? undefined : cutAt(study, card);
    const { batch } = batchOf(study, card.batch, at);
    const sheet = sheetOfCard(card);
    return readCellsOf(study, card).map((cell) => toStudyCell(card, cell, sheet, batch));
  });

const readCells = (study: Study): readonly { card: Card; cell: CellAsRead }[] =>
  study.cards.flatMap((card) => readCellsOf(study, card).map((cell) => ({ card, cell })));

const readCellsOf = ({ events }: Study, card: Card): readonly CellAsRead[] =>
  readCard(card, events).cells.filter(({ reading }) => reading.kind !== 'unread');

type Unfinished<T> = { -readonly [K in keyof T]: T[K] };

/** One spread, then what is known: a book reads hundreds of thousands of cells, and each further spread costs as much again. */
const toStudyCell = (
  { thicknessMm, shapeLengthMm }: Card,
  { setting, reading }: CellAsRead,
  sheet: string,
  batch: string | undefined,
): StudyCell => {
  const cell: Unfinished<StudyCell> = { ...setting, sheet, shapeLengthMm };
  if (thicknessMm !== undefined) cell.thicknessMm = thicknessMm;
  if (reading.kind === 'graded') {
    cell.grade = reading.grade;
    if (reading.edge !== undefined) {
      cell.edge = reading.edge.edge;
      if (reading.edge.taped !== undefined) cell.taped = reading.edge.taped;
    }
  }
  if (reading.kind === 'spoilt') cell.spoilt = reading.reason;
  if (batch !== undefined) cell.batch = batch;
  return cell;
};

/** Leaves behind what only the workshop's own books need. */
const toTally = (recorded: RecordedTally): CutStudy['tallies'][number] => ({
  setting: recorded.setting,
  out: recorded.out,
  hangs: recorded.hangs,
  stays: recorded.stays,
  spoilt: recorded.spoilt,
  partLengthMm: recorded.partLengthMm,
  ...(recorded.sheet === undefined ? {} : { sheet: recorded.sheet }),
});
