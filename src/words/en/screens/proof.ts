import type { PlaceGroup } from '../../../core/proof/groupPlaces.ts';
import type { CornersAdvice } from '../../../core/proof/powerInCorners.ts';
import type { DrawingPromise, Expected, PartKind } from '../../../core/proof/promiseForParts.ts';
import type { DrawingProof, NeverAtSpeed } from '../../../core/proof/proveDrawing.ts';
import {
  counted,
  durationWords,
  inHundred,
  lengthWords,
  onAverageInHundred,
  powerWords,
  speedWords,
  sureWords,
} from '../figures.ts';

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
    `Of ${counted(parts, 'part')} expect about ${about(needKnife.mean)} to need a knife because of the setting (nine times in ten ${between(needKnife)}).`,
    meetFlaw === undefined
      ? 'How many meet a glue pocket or a knot the readings cannot tell yet: count an order.'
      : `About ${about(meetFlaw.mean)} to meet a glue pocket or a knot (nine times in ten ${between(meetFlaw)}).`,
  ];
};

/** The promise for one part of the drawing. */
export const kindSentence = (kind: PartKind, outOf100: number): string => {
  const { count, cutMm, marginChange, surePct, outOf100Mean } = kind;
  const who = count === 1 ? 'One part' : `${String(count)} parts`;
  const weakest =
    marginChange < -0.005
      ? `, whose weakest place cuts as if it ran ${asFaster(marginChange)} faster,`
      : '';
  return `${who} with ${lengthWords(cutMm)} of cut${weakest}: this setting keeps ${inHundred(outOf100)} in 100, ${sureWords(surePct)} sure; ${onAverageInHundred(outOf100Mean)} in 100 on average.`;
};

export const cornersSentences = (
  { best, equal, now }: CornersAdvice,
  powerPct: number,
): readonly string[] => {
  const gain = `the hottest tip gets ${times(best.hottestRatio)} times the energy of the straight instead of ${times(equal.hottestRatio)}`;
  const cost =
    best.weakestChange < -0.005
      ? `the weakest place cuts as if it ran ${asFaster(best.weakestChange)} faster, which this setting can bear`
      : 'no place gets weaker than the straight';
  return [
    best.minPowerPct >= powerPct
      ? `Keep ${powerWords(powerPct)} in the corners too: with less, places would hang or get no more even.`
      : `Type ${powerWords(best.minPowerPct)} as power in corners: ${gain}; ${cost}.`,
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
