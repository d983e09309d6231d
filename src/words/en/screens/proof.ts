import type { Setting } from '../../../core/machine/setting.ts';
import type { PlaceGroup } from '../../../core/proof/groupPlaces.ts';
import type { CornersAdvice } from '../../../core/proof/cornerPower.ts';
import type { DrawingPromise, Expected, PartKind } from '../../../core/proof/promiseForParts.ts';
import type { DrawingProof, NeverAtSpeed } from '../../../core/proof/proveDrawing.ts';
import {
  counted,
  durationWords,
  inHundred,
  lengthWords,
  onAverageInHundred,
  powerWords,
  settingWords,
  speedWords,
  sureWords,
} from '../terms/figures.ts';

/** `1.4`, `12`: how many times as much. */
const times = (ratio: number): string => ratio.toFixed(ratio < 9.95 ? 1 : 0);

/** A count of parts that is a mean: a tenth below ten. */
const about = (count: number): string =>
  count < 0.05 ? 'none' : String(Number(count.toFixed(count < 9.95 ? 1 : 0)));

const between = ({ low, high }: Expected): string =>
  low === high ? String(low) : `${String(low)} to ${String(high)}`;

/** A margin change as a share of speed: −0.1 in ln speed cuts as if it ran 10.5 % faster. */
const asFaster = (marginChange: number): string => {
  const pct = 100 * Math.expm1(-marginChange);
  return pct > 300 ? 'many times' : `${pct.toFixed(0)}\u202f%`;
};

const where = (kind: PlaceGroup['kind'], count: number): string =>
  kind === 'corner'
    ? counted(count, 'corner')
    : count === 1
      ? '1 start or end of a line'
      : `${String(count)} starts or ends of lines`;

/** One sentence for places that are alike. */
export const placeSentence = (group: PlaceGroup, setMmPerS: number): string => {
  const { kind, count, verdict, marginChange, energyRatio, leastMmPerS, powerShare } = group;
  const slowed =
    leastMmPerS === 0
      ? 'the head stops'
      : `the head slows to ${speedWords(Math.round(10 * leastMmPerS) / 10)}`;
  const weak = `the power falls to ${(100 * powerShare).toFixed(0)}\u202f% of full and cuts as if it ran ${asFaster(marginChange)} faster than ${speedWords(setMmPerS)}`;
  switch (verdict) {
    case 'not-through':
      return `${where(kind, count)} will probably not come through: ${slowed}, ${weak}.`;
    case 'may-hang':
      return `${where(kind, count)} may hang: ${slowed}, ${weak}.`;
    case 'tips-burn':
      return `${where(kind, count)} will probably burn: ${slowed}, and half a millimetre gets up to ${times(energyRatio)} times the energy of the straight.`;
  }
};

export const promiseSentences = (promise: DrawingPromise): readonly string[] => {
  const { parts, needKnife, meetFlaw } = promise;
  return [
    `Of ${counted(parts, 'part')} ${needKnife.mean < 0.5 ? 'none' : `about ${about(needKnife.mean)}`} should need a knife because of the setting (nine times in ten ${between(needKnife)}).`,
    meetFlaw === undefined
      ? 'How many meet a flaw of the sheet the readings cannot tell yet: count an order.'
      : `About ${about(meetFlaw.mean)} to meet a flaw of the sheet (nine times in ten ${between(meetFlaw)}).`,
  ];
};

/** The promise for one part of the drawing. */
export const kindSentence = (kind: PartKind, outOf100: number): string => {
  const { count, cutMm, marginChange, surePct, outOf100Mean } = kind;
  const who = count === 1 ? 'One part' : `${String(count)} parts`;
  const weakest =
    marginChange < -0.005
      ? `, whose weakest place cuts as if it ran ${asFaster(marginChange)} faster`
      : '';
  return `${who} with ${lengthWords(cutMm)} of cut${weakest}: this setting keeps ${inHundred(outOf100)} in 100, ${sureWords(surePct)} sure; ${onAverageInHundred(outOf100Mean)} in 100 on average.`;
};

export const cornersSentences = (advice: CornersAdvice, powerPct: number): readonly string[] => {
  if (advice.rampStart === 'unknown')
    return [
      `No figure for the corner power yet: at which speed your controller’s power ramp starts is not known. Until then type ${powerWords(powerPct)} in the corners too.`,
      'To find out: look for the speed at which power starts to rise in the machine’s manual or its controller’s settings, and enter it; or cut a corners card, which tries several.',
      ...(advice.nowPct < powerPct
        ? [
            `With ${powerWords(advice.nowPct)} in the corners more of the path than shown here may run on it, at worst all of it: then nothing comes out.`,
          ]
        : []),
    ];
  const { best, equal, now } = advice;
  const gain = `the hottest tip gets ${times(best.hottestRatio)} times the energy of the straight instead of ${times(equal.hottestRatio)}`;
  const cost =
    best.weakestChange < -0.005
      ? `the weakest place cuts as if it ran ${asFaster(best.weakestChange)} faster, which this setting can bear`
      : 'no place gets weaker than the straight';
  return [
    best.minPowerPct >= powerPct
      ? `Keep ${powerWords(powerPct)} in the corners too: with less, places would hang or get no more even.`
      : `Type ${powerWords(best.minPowerPct)} as corner power: ${gain}; ${cost}.`,
    ...(now.minPowerPct === best.minPowerPct || now.minPowerPct >= powerPct
      ? []
      : [
          `With the ${powerWords(now.minPowerPct)} of now the hottest tip gets ${times(now.hottestRatio)} times, and the weakest place ${now.weakestChange < -0.005 ? `cuts as if it ran ${asFaster(now.weakestChange)} faster` : 'is as strong as the straight'}.`,
        ]),
  ];
};

export const timeSentence = ({ time, motion }: Pick<DrawingProof, 'time' | 'motion'>): string =>
  motion === 'known'
    ? `About ${durationWords(Math.round(time.seconds))}, between ${durationWords(Math.round(time.lowSeconds))} and ${durationWords(Math.round(time.highSeconds))}.`
    : `About ${durationWords(Math.round(time.seconds))} on a common machine: how yours moves is not known, so anything between ${durationWords(Math.round(time.lowSeconds))} and ${durationWords(Math.round(time.highSeconds))}.`;

export const neverSentence = ({ runs, lengthMm, fastestMmPerS }: NeverAtSpeed): string =>
  `${counted(runs, 'stretch', 'stretches')} between corners, ${lengthWords(Math.round(lengthMm))} in all, never get up to speed: the fastest reaches ${speedWords(Math.round(10 * fastestMmPerS) / 10)}.`;

export const drawingSentence = ({ drawing }: Pick<DrawingProof, 'drawing'>): string =>
  `${counted(drawing.parts, 'part')}, ${lengthWords(Math.round(drawing.cutMm))} of cut, ${lengthWords(Math.round(drawing.widthMm))} × ${lengthWords(Math.round(drawing.heightMm))}${drawing.openLines > 0 ? `; ${counted(drawing.openLines, 'open line')} beside them` : ''}.`;

export const noPlaces = (slowed: number): string =>
  slowed === 0
    ? 'The head slows nowhere.'
    : `The head slows at ${counted(slowed, 'place')}, and none of them should hang or burn.`;

/** The screen that carries a setting to a drawing. */
export const proofText = {
  promisedFor: (mm: number) =>
    `The promise of this sheet is for parts with ${lengthWords(mm)} of cut.`,
  promiseFor: (mm: number) => `Promise parts with ${lengthWords(mm)} of cut instead`,
  title: 'Prove it on the drawing',
  lead: (stock: string) =>
    `Where the head will slow, and what that does to the promise on ${stock}. The drawing stays on this page.`,
  pick: 'The drawing: SVG, DXF or G-code',
  pickMore: 'Take another drawing',
  setting: 'The setting',
  minPower: 'Corner power',
  minPowerHint: 'Leave it empty where it is the same.',
  startSpeed: 'Power ramp starts at',
  startSpeedHint: 'Of the machine: at or below it, all is corner power.',
  passes: 'Passes',
  noSetting: 'Say a speed and a power setting, or read a card first.',
  cut: 'What is cut through?',
  group: (name: string, lines: number, cutMm: number) =>
    `${name === '' ? 'no layer' : name}: ${counted(lines, 'line')}, ${lengthWords(Math.round(cutMm))}`,
  stages: {
    reading: 'Reading the drawing…',
    study: 'Calculating…',
    parts: 'Sorting outlines into parts…',
    places: 'Running along every line…',
    remarks: 'Looking for lines cut twice or too close…',
    corners: 'Trying corner powers…',
    promise: 'Carrying the promise to the parts…',
    time: 'Adding up the time…',
  },
  cancel: 'Stop',
  again: 'Prove it',
  stopped: (name: string) => `Stopped: ${name} is not proved with the setting above.`,
  stoppedShows: (name: string, setting: Setting) =>
    `What stands below is the proof before: ${name}, ${settingWords(setting)}.`,
  broke: (what: string) => `The calculation broke off (${what}). Please report this.`,
  slows: 'Where it slows',
  places: 'Place by place',
  back: 'Back',
  print: 'Print this page',
  pictureLabel: (proof: Pick<DrawingProof, 'places' | 'drawing'>) =>
    `The drawing with ${counted(proof.drawing.lines, 'line')}; ${counted(proof.places.groups.length, 'numbered kind of place', 'numbered kinds of places')}, told in the list beside it.`,
  looks: {
    'not-through': 'does not come through',
    'may-hang': 'may hang',
    'tips-burn': 'burns',
    warm: 'more energy than the straight',
    slow: 'slower, as strong',
  },
  simplified:
    'Fine detail and the mildest places are left out of the picture; all of them are counted.',
  more: (groups: number) => `And ${counted(groups, 'milder kind')} of place.`,
  promise: 'The promise for this drawing',
  noPromise: 'No promise for this drawing',
  noParts:
    'The lines that are cut close no outline, or what the power delivers is not known: there is no part to promise.',
  corners: 'Corner power',
  cornersSample: (places: number) => `Tried at ${counted(places, 'place')} of this drawing.`,
  cornersByCard:
    'What less corner power costs is taken from your cards that varied it: here in proportion to how far the power falls at each place.',
  cornersCard: 'Make a corners card',
  useCorners: (minPowerPct: number) => `See it with ${powerWords(minPowerPct)}`,
  time: 'Time',
  assumed:
    'How your machine moves is not known: places and time are calculated with a common one. Time a few jobs and it becomes yours.',
  remarks: 'The drawing itself',
  estimate:
    'All of this is calculated, not seen. Cut one part and look at its back before you cut the sheet.',
  entryGone:
    'The sheet that this setting came from is no longer here: there is nothing to prove it by.',
  used: (setting: Setting) => settingWords(setting),
};
