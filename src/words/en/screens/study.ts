import type { Setting } from '../../../core/machine/setting.ts';
import {
  counted,
  lengthWords,
  listed,
  powerWords,
  settingWords,
  speedWords,
} from '../terms/figures.ts';

/** The screens of one sheet: the bench with its cards, and the sheet on the bed. */
export const studyText = {
  stock: (material: string, thicknessMm: number, measured: boolean) =>
    `${lengthWords(thicknessMm)} ${material}${measured ? ', measured' : ''}`,
  cards: 'Cards of this sheet',
  cardTab: (code: string) => `Card ${code}`,
  known: 'What is known so far',
  noCard: 'No card of this sheet has been read.',
  noCardMore: 'A small one makes the answer firmer: six speeds to type, ten minutes.',
  runs: {
    always: 'It always comes out at',
    nearly: 'It nearly always comes out at',
    'often-not': 'Often it does not come out at',
  },
  runsAt: (comesOut: string, spot: { readonly powerPct: number; readonly speedMmPerS: number }) =>
    `${comesOut} ${speedWords(spot.speedMmPerS)}, ${powerWords(spot.powerPct)}.`,
  batch: (batch: string) => ` · batch ${batch}`,
  stripOf: (spot: Setting) => `A check strip of ${settingWords(spot)}.`,
  stripOfMore: 'Read it here. Whether that setting holds in this batch stands in the book.',
  stripSays: 'What it says of that setting',
  addDescribed: 'Describe a card that is cut',
  addDesigned: 'Make a card to cut',
  sheetFacts: 'The sheet',
  take: 'Files and list for the machine',
  removeCard: (code: string) => `Remove card ${code}`,
  removeCardAsk: 'What was read on it goes too, and the answer changes.',
  changeSheet: 'Material and thickness',
  changeMachine: 'The machine',
  compare: 'Compare two conditions',
  next: 'The next card',
  nextGain: (pct: number) => `It should let you run about ${pct.toFixed(0)}\u202f% faster.`,
  nextSettings: (settings: number, cells: number) =>
    `${counted(cells, 'shape')} at ${counted(settings, 'setting')}.`,
  nextAsk: 'What would another card tell?',
  nextMake: 'Make this card',
  nextAnyway: 'Make one all the same',
  also: 'What else do you know?',
  habit: 'What you run now',
  tally: 'Count an order',
  orders: 'Orders counted',
  removeTally: 'Remove this count',
  locked: 'A kept setting stands on this card, so taps change nothing.',
  unlock: 'Correct a reading',
  readPhoto: 'Read it from a photo',
  notOnBed: 'Another sheet lies on the bed.',
  putOnBed: 'Put this sheet on the bed',
  removeSheet: 'Remove this sheet',
  removeSheetAsk:
    'Its cards, readings and counts go with it; what is in the book stays. It can be put back from the bed.',
  gone: 'This sheet is not here.',
  goneMore: 'It was removed, or the address is mistyped.',
  away: 'The workshop computer does not answer, and this browser has no copy of the sheet.',
};

export const bedText = {
  title: 'On the bed',
  nothing: 'Nothing on the bed yet',
  nothingMore: 'Start from a card, a new sheet, or look around.',
  away: 'The workshop computer does not answer',
  awayMore: 'What lies on the bed stands here when it answers again.',
  unsent: (steps: number) =>
    `${counted(steps, 'step')} of this sheet ${steps === 1 ? 'is' : 'are'} not sent yet`,
  backupsFail: 'Backups are not being made',
  lastBackup: (at: string) => `The last one is of ${at.slice(0, 10)}, ${at.slice(11, 16)} UTC.`,
  noBackup: 'There is none yet.',
  unsentMore:
    'They are kept in this browser and are sent as soon as the workshop computer takes them.',
  unsentNotCounted:
    'What stands here is without them. They are kept in this browser and are sent as soon as the workshop computer takes them.',
  lastTally: 'Last order',
  noTally: 'No order counted yet.',
  same: 'Same sheet: count an order',
  newOne: 'A new sheet',
  open: 'Card and answer',
  goOn: 'Go on reading',
  readIt: 'It is cut: read it',
  takeIt: 'Files and list for the machine',
  makeCard: 'Make a card to cut',
  noCard: 'No card of it yet.',
  cardsOf: (codes: readonly string[]) =>
    codes.length === 0
      ? 'no card'
      : codes.length <= 2
        ? `card ${listed(codes)}`
        : counted(codes.length, 'card'),
  answer: 'The answer so far',
  others: 'Other sheets',
  findSheet: 'Search: material, thickness, batch, or the code of a card',
  noneFound: 'No sheet fits these words.',
  showMore: (shown: number, total: number) =>
    `Show more (${String(shown)} of ${String(total)} are shown)`,
  removed: (name: string) => `${name} was removed, with its cards.`,
  undoRemove: 'Undo',
  removedBefore: 'Removed sheets',
  putBack: 'Put it back',
  strip: 'check strip',
  elsewhere: 'Something else?',
  read: (read: number, cells: number) => `${String(read)} of ${counted(cells, 'shape')} read`,
};
