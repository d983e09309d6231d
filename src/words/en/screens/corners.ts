import type { BedTest } from '../../../core/bed/bedTest.ts';
import type { BedPlace, BedSide } from '../../../core/bed/place.ts';
import type { BedReport, BedSuspect, BedVerdict } from '../../../core/bed/bedVerdict.ts';
import type { Slower } from '../../../core/bed/placeEffects.ts';
import { counted, powerWords, speedWords } from '../terms/figures.ts';

const places: Readonly<Record<BedPlace, string>> = {
  'front-left': 'Front left',
  'front-right': 'Front right',
  'back-left': 'Back left',
  'back-right': 'Back right',
};

const sides: Readonly<Record<BedSide, string>> = {
  front: 'front',
  back: 'back',
  left: 'left side',
  right: 'right side',
};

const surely = (chance: number): string => `${String(Math.min(99, Math.floor(100 * chance)))} %`;
const chanceOf = (p: number): string =>
  p >= 0.995 ? '1' : p < 0.001 ? 'less than 0.001' : String(Number(p.toPrecision(2)));

const againstElsewhere = (slowerPct: number): string => {
  const whole = Math.round(slowerPct);
  return whole < 0 ? `${String(-whole)} % faster` : `${String(whole)} % slower`;
};

/** “12 % slower than elsewhere; 9 times in 10 between 4 % slower and 19 % slower” */
const slower = ({ slowerPct, lowPct, highPct }: Slower): string =>
  `${againstElsewhere(slowerPct)} than elsewhere; 9 times in 10 between ${againstElsewhere(lowPct)} and ${againstElsewhere(highPct)}`;

const inHundred = (chance: number): string => {
  if (chance < 0.01) return 'less than 1 in 100';
  return chance > 0.99 ? 'more than 99 in 100' : `${String(Math.round(100 * chance))} in 100`;
};

const untold = (verdict: Extract<BedVerdict, { kind: 'untold' }>): string => {
  const more = `About ${counted(verdict.cellsMoreEach, 'shape')} more at each place would tell an even bed.`;
  switch (verdict.because) {
    case 'place-unread':
      return 'Read at least one shape at each place first.';
    case 'all-out':
      return 'Everything came out, so nothing tells the places apart. Cut it again about a tenth faster.';
    case 'none-out':
      return 'Nothing came out, so little tells the places apart. Cut it again about a tenth slower.';
    case 'few':
      return `No place can be blamed yet, and none cleared. ${more}`;
  }
};

/** The four corners of the bed. */
export const cornersText = {
  title: 'Four corners',
  lead: 'A card sees one spot of the bed. The same setting cut in all four corners shows whether one of them gets less light, or lies out of focus.',
  door: 'Does it cut alike all over?',
  doorMore: 'A card sees one spot of the bed. A small job of its own looks at all four corners.',
  open: 'Four corners',
  noSheet:
    'It is cut near the changeover of the sheet on the bed, and no sheet has been named yet.',
  newSheet: 'Name a sheet',
  wish: 'The job',
  bedWidth: 'Bed width',
  bedHeight: 'Bed height',
  cellsEach: 'Shapes at each place',
  cellsEachMore:
    'A corner that is 15 % slower was found in about 1 of 2 simulated beds with 4 shapes at each place, and in 7 of 8 with 8. Of 500 even beds with 4, 15 were wrongly accused.',
  size: 'Size of a shape',
  margin: 'From the edges',
  setting: 'Setting for all shapes',
  settingMore:
    'Filled in where about two thirds should come out: there a weak place shows. If you type another, stay near the changeover.',
  noCard:
    'No card of this sheet has been read, so the changeover is only a guess. Read a card first, or expect to cut this twice.',
  scoring: 'For the words',
  scoringMore: 'A guess if you say nothing. Try it on scrap first.',
  picture: (cells: number) =>
    `The bed from above, front edge below: ${counted(cells, 'shape')} in its four corners.`,
  howToLay:
    'Use one whole sheet, or four offcuts of the same sheet, flat and held down; with a bed gap or a warp the place is not what is tested. Front is where you stand. The drawing is as big as the bed: place its front left corner at the bed’s. Where the labels come out elsewhere, go by where the shapes lie.',
  files: 'The drawing',
  fileTitle: 'Four corners',
  filesMore:
    'The places take turns, so that a tube that warms up weighs on all alike. G-code keeps that order; a control program may sort its own way. Letter A is the setting for all shapes.',
  read: 'What fell out?',
  readMore:
    'Tap a shape: once for out, again for hangs, again for not through. Leave a spoilt one unread.',
  keepMore: 'They stay in this tab until you keep or clear them.',
  keep: 'Keep it',
  kept: 'Kept, with today’s date.',
  earlier: 'Four corners so far',
  none: 'None of this machine yet.',
  lineOf: ({ cells, setting }: BedTest) =>
    `${counted(cells.length, 'shape')}, ${speedWords(setting.speedMmPerS)}, ${powerWords(setting.powerPct)}.`,
  remove: 'Remove',
  removeAsk: 'This reading of the four corners goes.',
  print: 'Print this page',
  clear: 'Clear all',
  places,
  cell: (id: string, state: string) => `${id}, ${state}`,
  answer: 'The answer',
  verdict: (verdict: BedVerdict): string => {
    switch (verdict.kind) {
      case 'place':
        return `${places[verdict.place]} is weak: ${surely(verdict.sure)} sure that it is more than 5 % slower than the other places.`;
      case 'side':
        return `The ${sides[verdict.side]} is weak: ${surely(verdict.sure)} sure that it is more than 5 % slower than the other side.`;
      case 'even':
        return `The bed cuts alike: ${surely(verdict.sure)} sure, of each place, that it is not more than 10 % slower than the others. Nothing to look at.`;
      case 'untold':
        return untold(verdict);
    }
  },
  placeLine: (report: BedReport, place: BedPlace): string => slower(report.effects.places[place]),
  weakChance: (each: Slower): string => `More than 5 % slower: ${inHundred(each.chanceWeak)}`,
  exact: (report: BedReport, place: BedPlace): string =>
    `${chanceOf(report.exact[place].p)}; of four places ${chanceOf(report.exact[place].pOfFour)}`,
  exactTitle: 'The exact test, without a model',
  exactMore:
    'The exact test (Fisher’s) knows no model: how probable it is that so few come out there, against the other three, by chance alone. The second figure allows for having looked at four places. Below 0.05 it agrees that a place is weak. It sees only “out” or not, and so needs more shapes than the model.',
  scatterFromCards: 'Scatter and hanging band come from the cards of this sheet.',
  scatterUnstudied:
    'Scatter and hanging band are those of common practice, since no card of this sheet has been read.',
  lookCautions: 'Take care while you look',
  look: 'What to look at, in this order',
  suspects: {
    'sheet-flat': [
      'The sheet first.',
      'Does it lie flat there, on the same support, and is it as thick? Turn it half round and cut again: if the weak place goes with it, it is the wood.',
    ],
    level: [
      'The bed’s height.',
      'Measure from the nozzle down to the sheet at all four corners, beam off. What differs by more than the depth of focus is out of focus.',
    ],
    mirrors: [
      'The mirrors.',
      'A beam that wanders with the distance is lost at one corner, as a rule the farthest from the tube. Lining them up is for trained people: ask the maker or a service.',
    ],
    lens: [
      'Lens and nozzle.',
      'Dirty, loose or tilted glass, or a beam that grazes the nozzle. Machine off and cooled before a hand goes in.',
    ],
  } satisfies Readonly<Record<BedSuspect, readonly [what: string, how: string]>>,
  lookMore: 'Common practice, no source. The cut tells where it is weak, not why.',
};
