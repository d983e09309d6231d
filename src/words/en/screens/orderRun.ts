import type { SheetVerdict } from '../../../core/running/sheetVerdict.ts';
import { counted, durationWords, lengthWords, powerWords } from '../terms/figures.ts';

interface Setting {
  readonly powerPct: number;
  readonly speedMmPerS: number;
}

const minutes = (value: number): string => durationWords(60 * Math.max(1, Math.round(value)));

const few = (mean: number): string =>
  mean < 0.95 ? (mean < 0.45 ? 'none' : 'one at most') : `about ${mean.toFixed(0)}`;

/** An order that is cut and counted sheet by sheet. */
export const orderRunText = {
  start: 'Start an order',
  startLead: 'Cut it sheet by sheet. After each count the next setting stands here.',
  startIt: 'Start the order',
  running: (parts: number) => `Order of ${String(parts)}`,
  parts: 'Good parts wanted',
  perSheet: 'Parts on one sheet',
  length: 'Length of cut of one part',
  lengthHint: 'All the way round, holes included; roughly will do. Or let the drawing tell it.',
  drawing: 'Drawing of one sheet (SVG, DXF or G-code)',
  drawingHas: (parts: number, mm: number) =>
    `${counted(parts, 'part')}, the longest with ${lengthWords(mm)} of cut. You will count on its picture.`,
  power: 'Power setting you run',
  wish: 'What matters most?',
  wishes: {
    promise: {
      label: 'Keep the promise',
      more: (outOf100: number, surePct: number) =>
        `Every sheet at a setting of which ${String(outOf100)} in 100 come out, ${String(surePct)}\u202f% sure.`,
    },
    cheapest: {
      label: 'Least time and money',
      more: (notOut: number) =>
        `Faster: up to ${String(notOut)} in 100 may need the knife over the whole order.`,
    },
  },
  accept: 'Of 100 parts so many may fail',
  costs: 'What the work costs, in seconds',
  costFields: {
    knife: 'Freeing one part with a knife',
    recut: 'A part that is lost, beside cutting it again',
    type: 'Typing a new setting',
    count: 'Counting a sheet',
  },
  figures: 'This order’s figures',
  missing: {
    length: 'Say how long the cut of one part is.',
    power: 'Say which power setting you run.',
  },
  planning: 'Working out the next setting…',
  broke: (message: string) => `The calculation broke: ${message}`,
  progress: (good: number, parts: number) => `${String(good)} of ${counted(parts, 'good part')}`,
  left: (left: number, sheets: number) =>
    `${counted(left, 'part')} left: ${counted(sheets, 'sheet')}`,
  time: (value: number) => `about ${minutes(value)}`,
  timeBand: (low: number, high: number) => `${minutes(low)} to ${minutes(high)}`,
  doneAt: (clock: string) => `done about ${clock}`,
  card: 'Cut this small card first',
  cardSettings: (speeds: readonly string[], powerPct: number) =>
    `${speeds.join(' · ')} at ${powerWords(powerPct)}`,
  cardSaves: (parts: number, value: number) =>
    `It saves about ${minutes(value)} on these ${counted(parts, 'part')}.`,
  makeCard: 'Make the card',
  readCard: 'Read the card that is there',
  sayHabit: 'I know a setting that works',
  withoutCard: 'Or say what you run now: then no card is needed.',
  sheet: (number: number) => `Sheet ${String(number)}`,
  first: 'Cut the first sheet at',
  faster: 'Next sheet, faster:',
  slower: 'Back to',
  same: 'Next sheet, as before:',
  lookFirst: 'Stop: look first',
  then: (speed: string) => `Then cut the next sheet at ${speed}.`,
  looked: 'Looked at it: go on',
  setting: ({ powerPct }: Setting, parts: number) =>
    `${powerWords(powerPct)} · ${counted(parts, 'part')}`,
  expect: (parts: number, mean: number, most: number) =>
    `Of ${counted(parts, 'part')} expect ${few(mean)} not out; more than ${String(most)} would be bad luck.`,
  sure: (outOf100: number, pct: number) =>
    `${String(outOf100)} in 100 come out: ${pct.toFixed(0)}\u202f% sure.`,
  mixed: (parts: number, speed: string) => `and ${counted(parts, 'part')} of it at ${speed}`,
  mixedWhy: 'Count the two apart: what the faster ones show pays on the sheets after.',
  typeSpeed: (from: string | undefined, to: string) =>
    from === undefined ? `Type in: speed ${to}` : `Type in: speed ${to} instead of ${from}`,
  typeNothing: 'Nothing to type: the machine holds it.',
  count: 'Count the sheet',
  allOut: (parts: number) => `All ${String(parts)} out`,
  allOutOf: (parts: number, speed: string) => `All ${String(parts)} at ${speed} out`,
  notAll: 'Not all out',
  tapParts:
    'Tap each part that was not out: once for knife, twice for not through, three times for spoilt.',
  grades: { out: 'Out', hangs: 'Knife', stays: 'Not through', spoilt: 'Spoilt' },
  part: (number: number, grade: string) => `Part ${String(number)}: ${grade}`,
  cutOther: 'Cut differently than said here?',
  cutAt: 'Speed it was cut at',
  cutParts: 'Parts that were cut',
  tooMany: 'More troubled parts than parts cut: check the figures.',
  save: (out: number, parts: number) => `Count it: ${String(out)} of ${String(parts)} out`,
  leave: 'Back to “all out”',
  countedNow: (number: number, out: number, parts: number) =>
    `Sheet ${String(number)} counted: ${String(out)} of ${String(parts)} out.`,
  files: 'Put this sheet’s settings into your drawing',
  filesMore:
    'Your own drawing again, each setting on a layer of its own whose name and colour spell it, inner outlines first. Nothing is moved. Check it in your program before you cut.',
  fileTitle: (number: number) => `Sheet ${String(number)}`,
  layer: (setting: string, parts: number) => `${setting}: ${counted(parts, 'part')}`,
  otherCount: (has: number, wanted: number) =>
    `The drawing has ${counted(has, 'part')}, this sheet ${String(wanted)}. Is it the right one?`,
  rest: (lines: number) =>
    `${counted(lines, 'line')} that free nothing stay first, on a layer of their own.`,
  climb: 'The climb',
  climbLead: 'Sheets from left to right, faster upwards.',
  climbNone: 'The picture begins with the first counted sheet.',
  saved: (seconds: number) =>
    seconds >= 30
      ? `Climbing has saved ${minutes(seconds / 60)} so far.`
      : seconds <= -30
        ? `Climbing has cost ${minutes(-seconds / 60)} so far.`
        : 'Climbing has neither saved nor cost much so far.',
  savedHow:
    'Beside every sheet at the first one’s setting: shorter cuts, less typing, knife and cutting again.',
  climbKey: {
    sheet: 'A counted sheet',
    bad: 'A sheet with parts that did not come out, and how many',
    band: 'Where the fastest speed that keeps the promise may lie',
    next: 'The next sheet',
    faster: 'A few parts at a faster setting',
  },
  climbPicture: (sheets: number, from: string, to: string, failed: number) =>
    `${counted(sheets, 'sheet')}, from ${from} to ${to}; ${counted(failed, 'part')} did not come out.`,
  keepsSure: 'surely keeps',
  keepsHardly: 'hardly keeps',
  sheets: 'Sheets counted',
  remove: 'Remove this count',
  removeAsk: 'The sheet counts no more, and the next setting is worked out anew.',
  print: 'Print',
  end: 'End the order here',
  endAsk: 'What was counted stays; the next order starts from it.',
  ended: 'Ended before all parts were there.',
  done: 'All parts are there.',
  doneLead: (sheets: number, at: string) =>
    `${counted(sheets, 'sheet')}, the last at ${at}. The next order starts there.`,
  again: 'Start the next order',
  carried: 'What this order starts from',
  carriedSheets: (sheets: number, parts: number, fastest: string) =>
    `On this sheet’s batch ${counted(sheets, 'count')} with ${counted(parts, 'part')}, at up to ${fastest}: trusted in full, unless something was changed on the machine since.`,
  carriedNone: 'Nothing was counted on this sheet yet.',
  carriedCards: (cards: number) => `${counted(cards, 'card')} of this sheet, as read.`,
  carriedHabit: 'What you said you run: trusted as a habit, less than any count.',
  carriedEarlier: (sheets: number) =>
    `${counted(sheets, 'earlier sheet')} of the same material on this machine: they teach scatter and how power acts; their level only as far as batches are alike.`,
  says: {
    luck: ({ notOut, foretold, chancePct }: SheetVerdict) =>
      `${String(notOut)} not out where ${foretold.toFixed(1)} were foretold: that happens in ${chancePct.toFixed(0)} sheets of 100. Bad luck is enough to explain it.`,
    'flawed-board': ({ spoilt }: SheetVerdict) =>
      `${counted(spoilt, 'part')} spoilt: that is the board, not the setting. Slower would not help.`,
    'bad-sheet': ({ notOut, foretold }: SheetVerdict) =>
      `${String(notOut)} not out where ${foretold.toFixed(1)} were foretold: too many for bad luck. The sheets before were fine, so look for what is new: this board, or something that has just happened.`,
    drifting: ({ notOut, foretold }: SheetVerdict) =>
      `${String(notOut)} not out where ${foretold.toFixed(1)} were foretold, and the sheets before were going down already: the machine is drifting.`,
  },
  lookAt: 'Look at this, the cheapest first',
} as const;
