import { counted, inHundred, lengthWords, listed, sureWords } from '../terms/figures.ts';

/** The book of proven settings. */
export const bookText = {
  title: 'The book',
  lead: 'Settings that were kept, with what they hold for and where they came from. Those for the sheet on the bed come first.',
  search: 'Search: material, thickness, or the code on a label',
  empty: 'Nothing is kept yet. Read a card: its answer has a button that keeps the setting here.',
  start: 'Read a card',
  promises: 'Do our promises hold here?',
  wall: 'List for the wall',
  marks: 'Score, engrave, tape',
  showMore: (shown: number, total: number) =>
    `Show more (${String(shown)} of ${String(total)} are shown)`,
  noneFound: 'Nothing in the book fits these words.',
  promise: (outOf100: number, surePct: number) =>
    `${inHundred(outOf100)} in 100 come out; ${sureWords(surePct)} sure`,
  onlyByAir: (codes: readonly string[]) => `Differs from ${listed(codes)} only by air.`,
  onBed: (sheet: string, holds: boolean) =>
    holds
      ? `The sheet on the bed now (${sheet}) differs in nothing that was noted from what this setting holds for.`
      : `Another sheet lies on the bed now: ${sheet}.`,
  holdsFor: 'Holds for',
  stock: (material: string, nominalMm: number, measuredMm: number | undefined) =>
    `${lengthWords(nominalMm)} ${material}${measuredMm === undefined ? '' : `, measured ${lengthWords(measuredMm)}`}`,
  batch: (batch: string) => `batch ${batch}`,
  promiseFor: {
    sheet: 'that sheet',
    batch: 'any sheet of that batch',
    newBatch: 'a batch not seen',
  },
  partLength: (mm: number) => `parts with ${lengthWords(mm)} of cut`,
  cameFrom: 'Came from',
  from: (cards: readonly string[], cells: number, parts: number, habit: boolean) =>
    [
      ...(cells > 0
        ? [`${counted(cells, 'shape')} of ${counted(cards.length, 'card')} (${cards.join(', ')})`]
        : []),
      ...(parts > 0 ? [counted(parts, 'counted part')] : []),
      ...(habit ? ['what was run before'] : []),
    ].join(', ') || 'nothing that was counted',
  keptOn: 'Kept',
  choice: 'A person’s choice',
  checked: 'The promise, checked by orders',
  verdicts: {
    'nothing-tallied': 'No order counted yet: the promise is the model’s alone.',
    'as-promised': 'As promised.',
    'too-few-to-say': 'Too few parts to say.',
    'borne-out': 'Borne out: the count alone shows it.',
    'worse-than-promised': 'Worse than promised.',
  },
  tallied: (notOut: number, parts: number, allowed: number) =>
    `${String(notOut)} of ${counted(parts, 'sound part')} did not come out; the promise allows about ${allowed < 10 ? allowed.toFixed(1) : allowed.toFixed(0)} of them.`,
  chance: (pct: number) =>
    `So many or more happen by chance in ${pct < 1 ? 'fewer than 1' : pct.toFixed(0)} of 100 such orders.`,
  worseDo: 'Cut a check strip or a small card before the next order, one step slower until then.',
  openStudy: 'Cards and answer',
  compare: 'Compare two conditions',
  remove: 'Take it out of the book',
  removeAsk: (orders: number) =>
    orders === 0
      ? 'The setting goes; the sheet and its cards stay. For 24 hours it can be taken back in the book.'
      : `The setting goes with ${counted(orders, 'counted order')}; the sheet and its cards stay. For 24 hours it can be taken back in the book.`,
  back: 'The whole book',
  label: 'Shelf label',
  labelLead:
    'Print it, cut it out, and put it where the sheets stand. The code opens this setting.',
  labelCode: (code: string) => `The address of kept setting ${code} for a phone’s camera`,
  labelCare: 'Stay with a running laser. Extinguisher within reach.',
  print: 'Print it',
  openEntry: 'Back to the kept setting',
  importAll: 'Bring in such a file',
  notOurs:
    'This is not a file that was written here. Choose one that ends in .json and was saved by “Everything in one file”.',
  imported: (sheets: number, settings: number) =>
    `Brought in: ${counted(sheets, 'sheet')} and ${counted(settings, 'setting')} that were not here yet.`,
  alone: 'Throughcut itself in one file',
  aloneMore:
    'It opens in a browser on a computer that has nothing else of it, without a network too, and keeps its own workshop there. Carry work over with “Everything in one file”.',
  exportAll: 'Everything in one file',
  exportTable: 'The book as a table (CSV)',
  exportCells: 'All readings as a table (CSV)',
  out: 'Save everything elsewhere, or bring it in',
  saving: 'This entry is still on its way to the workshop computer.',
};
