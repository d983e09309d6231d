import type { SheetCut } from '../../../core/study/sheetsCut.ts';

/** Which board of the delivery a card is cut from. */
export const boardText = {
  which: 'Which sheet is it cut from?',
  own: 'a new one',
  before: ({ sheet, cards, isNamed }: SheetCut): string =>
    isNamed ? `sheet ${sheet}` : `the one of card ${cards[0] ?? ''}`,
  name: 'Batch, and number of the sheet',
  sheet: 'Number or name of the sheet',
  sheetHint: 'Only if it bears one. Else this card counts as cut from a sheet of its own.',
};
