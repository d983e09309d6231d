import type { PromiseGroup, PromiseLine, PromiseScore } from '../../../core/score/scorePromises.ts';
import { counted, inHundred, onAverageInHundred } from '../terms/figures.ts';

const share = (outOf100: number): string => onAverageInHundred(outOf100);

const band = ([low, high]: readonly [number, number]): string =>
  `${low.toFixed(1)} to ${high.toFixed(1)}`;

const whose = ({ by, name }: Pick<PromiseGroup, 'by' | 'name'>): string =>
  by === 'all' ? 'In all' : name;

const verdicts: Readonly<Record<PromiseLine['verdict'], (line: PromiseLine) => string>> = {
  kept: ({ promisedOutOf100 }) => `The promise of ${inHundred(promisedOutOf100)} is kept.`,
  fits: ({ promisedOutOf100 }) =>
    `That fits the promise of ${inHundred(promisedOutOf100)}; it does not prove it yet.`,
  broken: ({ promisedOutOf100 }) => `The promise of ${inHundred(promisedOutOf100)} is not kept.`,
  'too-few': () => 'Too few sheets to say.',
};

/** One promise in a sentence. */
const line = (one: PromiseLine): string =>
  `${counted(one.sheets, 'sheet')} promised ${inHundred(one.promisedOutOf100)} in 100: of ${counted(one.parts, 'sound part')} ${share(one.outOf100)} in 100 came out (95\u202f% sure: ${band(one.bandOf100)}). ${verdicts[one.verdict](one)}`;

/** Whether promises hold: the page. */
export const scoreText = {
  title: 'Do our promises hold here?',
  lead: 'Every sheet and order that was counted, held against what was promised before it was cut.',
  none: 'Nothing to hold yet.',
  noneMore:
    'Count the sheets of an order, or orders cut with a kept setting: each is held against what was promised.',
  by: { all: 'In all', material: 'By material', machine: 'By machine' },
  whose,
  line,
  worse: ({ worseSheets, sheets, worseBandPct }: PromiseLine) =>
    `${String(worseSheets)} of ${counted(sheets, 'sheet')} came out worse than the promise allows for by luck, where up to 5 in 100 are to be expected (95\u202f% sure: ${worseBandPct[0].toFixed(0)} to ${worseBandPct[1].toFixed(0)} in 100).`,
  effect: ({ designEffect }: PromiseLine) =>
    designEffect > 1.05
      ? `Parts of one sheet are good or bad together: the band is as wide as that of ${designEffect.toFixed(1)} times fewer parts.`
      : '',
  picture: 'Foretold and come',
  pictureLead:
    'Sheets of which about the same share was foretold stand together. On the line they came as foretold; below it worse.',
  pictureSays: (bins: number) =>
    `${counted(bins, 'group')} of sheets: the share that came out against the share that was foretold.`,
  foretold: 'foretold, of 100',
  came: 'came out, of 100',
  bin: (sheets: number) => counted(sheets, 'sheet'),
  how: 'How it is worked out',
  howMore:
    'Spoilt parts are left out: they say nothing of the setting. Bands are exact (Clopper and Pearson) for as many independent parts as say as much (Rao and Scott), so that sheets which are bad as a whole widen them. Below ten sheets, or fewer than three failures to be expected, nothing is said.',
  give: 'Give the counts away',
  giveMore:
    'Counts with what was promised of them, without names, notes and dates: what is in the file stands in docs/formats/counts.md. Anyone can put such files together with the command score.',
  download: 'Counts without names',
  print: 'Print',
};

/** A score in sentences, for the command line. */
export const scoreSaid = ({ groups }: PromiseScore): readonly string[] =>
  groups.length === 0
    ? [scoreText.none]
    : groups.flatMap((group) =>
        group.promises.map((promise) => `${whose(group)}: ${line(promise)}`),
      );
