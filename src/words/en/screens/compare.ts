import type { Comparison } from '../../../core/compare/compareConditions.ts';
import type { PieceRead } from '../../../core/compare/pieces.ts';
import type { Difference } from '../../../core/compare/twoConditions.ts';
import { counted } from '../terms/figures.ts';

const differs: Readonly<Record<Difference, string>> = {
  air: 'The air',
  lens: 'The lens',
  mirrors: 'Clean mirrors',
  batch: 'The batch',
  machine: 'The machine',
  other: 'Something else',
};

/** What is done between the two cards, and minded. */
const between: Readonly<Record<Difference, string>> = {
  air: 'Set the air for the second one, let the gauge settle, and cut it at once.',
  lens: 'Change the lens as the maker’s manual says, machine off and cooled; find the focus again; cut the second one.',
  mirrors:
    'Clean the mirrors as the maker’s manual says, machine off and cooled. Lining them up is for trained people. Then cut the second one.',
  batch: 'Cut the second one from the other batch at once. Two batches never lie on one sheet.',
  machine: 'Cut the second one on the other machine, from the other half of the same sheet.',
  other: 'Change the one thing that is compared, nothing else, and cut the second one at once.',
};

/** The screen that sets two conditions beside each other. */
export const compareText = {
  title: 'Compare',
  lead: 'More air or less, another lens, cleaned mirrors, two batches, two machines: does it let you cut faster, and how sure is that?',
  noSheet: 'Cards are compared, and none has been read yet.',
  newSheet: 'Name a sheet',
  differsAsk: 'What differs?',
  differs,
  pick: 'Which cards?',
  pickMore:
    'Lay each read card on a side. A card that was cut with two airs may be laid air by air.',
  noPieces: 'No card of this sheet has been read.',
  onePiece:
    'Only one card has been read. Read a second, cut under the other condition, or take one from another sheet.',
  toSheet: 'Open the sheet',
  sides: { none: 'Neither', one: 'First', other: 'Other' },
  piece: ({ card, air }: PieceRead) => `Card ${card}${air === undefined ? '' : `, air ${air}`}`,
  pieceMore: ({ out, cells, sheet, batch }: PieceRead) =>
    [
      `${String(out)} of ${counted(cells, 'shape')} came out`,
      ...(batch === undefined ? [] : [`batch ${batch}`]),
      ...(sheet === undefined ? [] : [`sheet ${sheet}`]),
    ].join(', '),
  otherSheet: 'Cards of another sheet as well',
  noOtherSheet: 'No',
  oneSheetAsk: 'Were both cut from one sheet?',
  oneSheet: { yes: 'Yes, one sheet', no: 'No, or not sure' },
  nameThem: 'Names and what is worth having',
  nameOne: 'Call the first',
  nameOther: 'Call the other',
  usually: (name: string) => `Else: ${name}`,
  worth: 'Worth having from, in %',
  tell: 'To be told from nothing, in %',
  choose: 'Lay at least one card on each side.',
  calculating: 'Calculating…',
  broke: (message: string) => `The calculation broke: ${message}`,
  answer: 'The answer',
  picture: (low: string, middle: string, high: string) =>
    `Gain in speed: ${middle}, with 95 in 100 between ${low} and ${high}.`,
  slower: 'slower',
  faster: 'faster',
  same: 'same',
  read: (
    names: { readonly one: string; readonly other: string },
    { one, other }: Comparison['read'],
  ) =>
    `Came out: ${String(one.out)} of ${counted(one.cells, 'shape')} with ${names.one}, ${String(other.out)} of ${String(other.cells)} with ${names.other}.`,
  exactTitle: 'The exact test, without a model',
  exactMore:
    'It sees only “out” or not, and only shapes at one setting under both conditions, so it needs more shapes than the figure above.',
  exactOwn: 'As each condition had its own sheet, it cannot tell the sheet from the condition.',
  statistics: 'How it is calculated',
  statisticsMore: (points: number) =>
    `The model of the answer, with one more effect on the speed at which half the shapes come out. Before anything was cut the effect was believed normal about nothing, sd 0.15 in ln speed: common practice, no source. The range is the middle 95 % of its posterior, from ${String(points)} effective lines. Sheets and batches have terms of their own, so that they do not pose as the condition. In simulated workshops the range held the truth in 95 to 97 of 100.`,
  settle: 'What would settle it?',
  settleCard: (card: string) => `The same settings for both: ${card}.`,
  settleMore: 'What would tell it closer?',
  settleMoreOpen: 'The card to cut for that',
  settleCells: (cells: number, perCard: number, sheets: string) =>
    `${counted(cells, 'shape')} at each setting, ${sheets}.${cells > perCard ? ` That is more than one card takes: make ${String(Math.ceil(cells / perCard))} of ${String(perCard)} at each setting for either condition.` : ''} A greater difference needs far fewer: say above what is to be told.`,
  settleSheet: 'both cards on one sheet',
  settleBatches: 'a card from each batch',
  steps: (difference: Difference) => [
    'Make the card twice with the same settings and shapes: one for each condition.',
    'Cut the first. Focus, place on the bed and everything else stay as they are.',
    between[difference],
    'Read both, lay one on each side here, and say whether they were cut from one sheet.',
  ],
  makeFor: (name: string) => `Make the card for ${name}`,
  cautions: 'Take care while you compare',
};
