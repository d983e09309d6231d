import type { Air } from '../../../core/machine/air.ts';
import type { BestEdge } from '../../../core/reading/edge.ts';
import type { MorePasses } from '../../../core/cutmodel/fitAnswer.ts';
import type { PromiseWish } from '../../../core/reading/promise.ts';
import type { Aim } from '../../../core/cutmodel/aims.ts';
import {
  counted,
  currentWords,
  durationWords,
  inHundred,
  lengthWords,
  onAverageInHundred,
  powerWords,
  settingWords,
  speedWords,
  sureWords,
} from '../terms/figures.ts';

interface Spot {
  readonly powerPct: number;
  readonly speedMmPerS: number;
  readonly minPowerPct?: number;
  readonly passes?: number;
  readonly air?: Air;
}

/** The edges of 100 parts. */
interface Edges {
  readonly meanOf100: number;
  readonly atLeastOf100: number;
}

const edgesWords = (best: BestEdge, { meanOf100, atLeastOf100 }: Edges): string =>
  `about ${inHundred(meanOf100)} in 100 edges ${best}${
    atLeastOf100 < 1 ? '' : `, at least ${inHundred(atLeastOf100)} nine times in ten`
  }`;

/** What the answer says. */
export const answerText = {
  cutAt: (spot: Spot) => `Cut at ${settingWords(spot)}.`,
  promised: (outOf100: number, surePct: number) =>
    `${inHundred(outOf100)} in 100 come out; we are ${sureWords(surePct)} sure.`,
  noneYet: 'No setting yet.',
  guess: 'A guess: this lies outside what was cut.',
  steps: 'Which of these do you run?',
  surer: 'One step surer',
  holds: 'Fastest that holds',
  faster: 'One step faster',
  onlySureOf: (surePct: number, outOf100: number) =>
    `only ${sureWords(surePct)} sure of ${inHundred(outOf100)}`,
  onAverage: (outOf100: number) => `${onAverageInHundred(outOf100)} in 100 come out on average`,
  sureOf: (surePct: number, outOf100: number) =>
    `${sureWords(surePct)} sure of ${inHundred(outOf100)}`,
  edge: {
    names: {
      clean: 'Cleanest edge that holds',
      clear: 'Clearest edge that holds',
    } satisfies Record<BestEdge, string>,
    share: edgesWords,
    here: (best: BestEdge, edges: Edges, spot: Spot, taped: boolean) =>
      `At ${speedWords(spot.speedMmPerS)}${taped ? ', through tape' : ''}: ${edgesWords(best, edges)}.`,
    noBetter: 'No setting that holds is known to have a better edge.',
    notYet: (edges: number, wanted: number) =>
      `The edge is not known yet: ${counted(edges, 'edge')} graded, it takes ${String(wanted)}.`,
  },
  costs: (seconds: number) => `costs ${durationWords(seconds)} a part`,
  saves: (seconds: number) => `saves ${durationWords(seconds)} a part`,
  timeOnly: (partLengthMm: number) =>
    `Time of the cut alone, for a part with ${lengthWords(partLengthMm)} of cut.`,
  keepThis: (spot: Spot) => `Keep ${speedWords(spot.speedMmPerS)} in the book`,
  rest: (left: number) => `What did the other ${counted(left, 'shape')} do?`,
  restMore: 'Nothing is kept from a card that is read in part until that is said.',
  restStayed: 'They were not through',
  restUnseen: 'They were not looked at',
  restLater: 'Go on reading',
  openEntry: 'Open it',
  printLabel: 'Label for the shelf',
  prove: 'Prove it on the drawing',
  kerfAndJoints: 'Kerf and joints',
  kept: (spot: Spot) => `${speedWords(spot.speedMmPerS)} kept in the book.`,
  knives: 'Of 200 parts, how many may need a knife?',
  knifeOptions: { six: '6', two: '2', none: '0' },
  knifeMore: {
    six: '97 in 100 come out',
    two: '99 in 100 come out',
    none: 'an even chance of none',
  },
  partLength: 'Length of cut of one part',
  partLengthHint: 'All the way round, holes included. Longer outlines have more chances to fail.',
  holdsFor: 'The promise is for',
  holdsForOptions: {
    sheet: 'this sheet',
    batch: 'any sheet of this batch',
    newBatch: 'a batch not seen yet',
  },
  aim: 'Among settings that hold, take the',
  aims: { fastest: 'fastest', gentlest: 'gentlest', cleanest: 'cleanest' } satisfies Record<
    Aim,
    string
  >,
  aimMore: {
    fastest: 'fewest seconds a part',
    gentlest: 'least current through the tube',
    cleanest: 'least heat left in the edge',
  } satisfies Record<Aim, string>,
  untold: 'What this could not tell',
  untoldMore: (count: number) => `And ${counted(count, 'more thing')}`,
  bar: 'To the answer',
  lookAgain: (cells: string) => `Look again at ${cells}: the rest of the card says otherwise.`,
  overdriven: (cells: string) => `${cells} ran above the tube’s rated current.`,
  draws: (powerPct: number, currentMa: number, ratedPct: number) =>
    `${powerWords(powerPct)} setting: about ${currentWords(currentMa)}, ${powerWords(Math.round(ratedPct))} of rated.`,
  passes: (
    { passes, speedMmPerS, powerPct, quickerPct }: MorePasses,
    { outOf100, surePct }: PromiseWish,
  ) => {
    const setting = `${counted(passes, 'pass', 'passes')} at ${speedWords(speedMmPerS)}, ${powerWords(powerPct)}`;
    if (quickerPct === null)
      return `${setting}: ${inHundred(outOf100)} in 100 come out, we are ${sureWords(surePct)} sure; one pass has no answer yet.`;
    if (quickerPct > 0)
      return `${setting} pay: they keep the promise ${String(quickerPct)} % quicker.`;
    return quickerPct === 0
      ? `${setting} keep the promise in the same time as one pass.`
      : `${setting} keep the promise too, but do not pay: ${String(-quickerPct)} % slower than one pass.`;
  },
  corners: (minPowerPct: number, speedMmPerS: number) =>
    `Corner power: ${powerWords(minPowerPct)} or more keeps the promise at ${speedWords(speedMmPerS)}.`,
  onThisSheet: (
    { speedMmPerS, powerPct }: { readonly speedMmPerS: number; readonly powerPct: number },
    { outOf100, surePct }: PromiseWish,
  ) =>
    `On the rest of the sheet that the cards were cut from: ${speedWords(speedMmPerS)}, ${powerWords(powerPct)}. ${inHundred(outOf100)} in 100 come out there, we are ${sureWords(surePct)} sure; other sheets of the batch may be slower to cut.`,
  promiseThisSheet: 'Promise it for that sheet alone',
  overdrive: 'Overdrive: above its rated current the tube lives shorter.',
  missing: {
    tell: 'Add them',
    current: 'Add the rated current and a few meter readings to see the load on the tube.',
  },
  picture: 'The picture',
  ask: 'Ask for another promise',
  power: 'At which power setting?',
  anyPower: 'whichever is best',
  model: 'How this was calculated',
  basis: (cells: number, tallied: number) =>
    tallied > 0
      ? `From ${counted(cells, 'shape')} and ${counted(tallied, 'counted part')}.`
      : `From ${counted(cells, 'shape')}.`,
};
