import type { MeterWhy } from '../../../core/metering/meterPlan.ts';
import type { RatedSetting } from '../../../core/metering/meterReport.ts';
import type { Metering } from '../../../core/metering/metering.ts';
import { counted, currentWords, powerWords, temperatureWords } from '../terms/figures.ts';

const why: Readonly<Record<MeterWhy, string>> = {
  look: 'a first look',
  threshold: 'where it begins to fire',
  bend: 'it bends here',
  span: 'on the way up',
  rated: 'near rated current',
};

const per = (share: number): string => `${String(Number(share.toFixed(0)))}\u202f%`;

const rated = (ratedMa: number, found: RatedSetting): string => {
  if (!found.reached && found.mostMa <= ratedMa && found.mostMa > 0.95 * ratedMa)
    return `${powerWords(found.mostPct)} drew ${currentWords(found.mostMa)}, ${per((100 * found.mostMa) / ratedMa)} of the rated ${currentWords(ratedMa)}: go no higher. Keep to ${powerWords(found.keepToPct)} or below.`;
  if (!found.reached)
    return found.keepToPct === 0
      ? `Every setting read drew more than the rated ${currentWords(ratedMa)}: none is known to keep within it.`
      : `The rated ${currentWords(ratedMa)} was not reached: ${powerWords(found.mostPct)} drew ${currentWords(found.mostMa)}. Nothing is known above. Keep to ${powerWords(found.keepToPct)} or below.`;
  const { value, low, high } = found.at;
  const between =
    high === null
      ? `${powerWords(tenth(low))} or more`
      : `between ${powerWords(tenth(low))} and ${powerWords(tenth(high))}, 95\u202f% sure`;
  return `The rated ${currentWords(ratedMa)} is reached at ${powerWords(tenth(value))} (${between}). Keep to ${powerWords(found.keepToPct)} or below.`;
};

const tenth = (value: number): number => Number(value.toFixed(1));

/** Reading the milliammeter, and the meterings before. */
export const meterText = {
  title: 'Read the meter',
  lead: 'What does each setting draw? A quarter of an hour at the panel meter; then a setting can be told in milliamperes and in per cent of what the tube may draw.',
  before: 'Before you fire',
  rated: 'Rated current',
  ratedHint: 'From the tube’s label or its maker’s sheet. The list below stops there.',
  water: 'Water temperature',
  waterHint: 'As the chiller shows it, tube warm.',
  steps: 'Fire and read',
  stepsMore: 'Common practice, no source. Your machine’s manual comes first.',
  how: [
    'Warm up as for work, water running. Under the head a scrap of sheet that you cut anyway; nothing shiny. Lid shut, extraction on.',
    'Set the power from the list. Fire with the panel’s test key, no longer than stands beside the setting: read the needle as it stops rising, and stop at once at a flame. Move the scrap to a fresh place before the next pulse. Without a test key run one line over the scrap instead, at the speed you engrave with. Never fire above the rated current, not for a moment.',
    'Read the panel meter from outside, lid shut, to half a division. If nothing fires, write 0.',
    'Go up the list once. If the needle passes rated current, stop firing at once, write what you saw, and go no higher.',
    'Wait about ten seconds between. Then come down the list once more: two readings a setting tell how far one can be trusted.',
  ],
  setting: 'Setting',
  up: 'Going up',
  down: 'Coming down',
  readingAt: (powerPct: number, round: 'up' | 'down') =>
    `Current at ${powerWords(powerPct)}, ${round === 'up' ? 'going up' : 'coming down'}`,
  why: (reason: MeterWhy) => why[reason],
  pulse: (seconds: number) =>
    `pulse at most ${String(seconds)}\u202fs, scrap moved to a fresh place first`,
  expected: (currentMa: number) => `about ${currentWords(currentMa)}`,
  once: 'once is enough',
  own: 'Another setting',
  ownAdd: 'Add it to the list',
  more: (missing: number) =>
    `${counted(missing, 'reading')} to go; the list grows as the readings show where to look.`,
  complete: 'Nothing is missing. Keep it.',
  startOver: 'Begin again',
  startOverAsk: 'Every figure in the list goes.',
  says: 'What it says',
  tooFew: 'Two settings at which the tube fires make a curve.',
  fires: (darkAtPct: number | null, firesAtPct: number) =>
    darkAtPct === null
      ? `It fires at ${powerWords(firesAtPct)}, the lowest setting tried.`
      : `It begins to fire between ${powerWords(darkAtPct)} and ${powerWords(firesAtPct)}.`,
  ratedAt: rated,
  noise: (sdMa: number, from: 'repeats' | 'neighbours' | 'assumed') => {
    const about = currentWords(Math.max(0.1, sdMa));
    if (from === 'repeats') return `A single reading scatters by about ${about}.`;
    return from === 'neighbours'
      ? `A single reading seems to scatter by about ${about}, judged by how unevenly the settings follow one another.`
      : `A single reading is assumed to scatter by ${about}: there is too little to tell.`;
  },
  scale: 'The band does not know whether the meter itself reads high or low.',
  picture: (fromPct: number, toPct: number) =>
    `Current against setting, from ${powerWords(fromPct)} to ${powerWords(toPct)}, with its band and the readings. The table below says the same.`,
  axisSetting: 'power setting, %',
  axisCurrent: 'current, mA',
  ratedLine: 'rated',
  convert: 'One figure from another',
  convertSetting: 'Setting',
  convertCurrent: 'Current',
  convertRated: 'Of rated current',
  convertBand: (low: string, high: string | null) =>
    high === null ? `${low} or more, 95\u202f% sure` : `${low} to ${high}, 95\u202f% sure`,
  perRated: per,
  table: 'Every setting',
  ofRated: 'of rated',
  plusMinus: 'band of 95\u202f%',
  keepAndUse: 'Keep it, and use it for the machine',
  keep: 'Keep it only',
  allowMost: (powerPct: number) => `Allow no more than ${powerWords(powerPct)}`,
  allowed: (powerPct: number) => `No more than ${powerWords(powerPct)} is allowed now.`,
  kept: 'Kept, with today’s date.',
  keptAndUsed: 'Kept, with today’s date. From now on settings are told in milliamperes by it.',
  earlier: 'Meterings so far',
  none: 'None yet. The next one can be held against the first.',
  line: ({ readings, waterC }: Metering) =>
    [
      counted(readings.length, 'reading'),
      waterC === undefined ? undefined : `water ${temperatureWords(waterC)}`,
    ]
      .filter((part) => part !== undefined)
      .join(', '),
  ratedShort: ({ ratedCurrentMa }: Metering, found: RatedSetting) =>
    found.reached
      ? `${currentWords(ratedCurrentMa ?? 0)} at ${powerWords(tenth(found.at.value))}`
      : `${currentWords(found.mostMa)} at ${powerWords(found.mostPct)}`,
  use: 'Use it for the machine',
  remove: 'Remove',
  removeAsk: 'This metering goes, and cannot be held against later ones any more.',
  compare: 'Has the curve moved?',
  compareBefore: 'Then',
  compareNow: 'Now',
  cuts: 'Do parts come out as they did?',
  cutsNow: { 'as-before': 'As before', weaker: 'Weaker', unsaid: 'Don’t know' },
  lookFirst: 'Where to look, cheapest first',
  statistics: 'How that was judged',
  statisticsMore: (ofLevel: number, ofShape: number) =>
    `Held against the scatter of the readings of both. If nothing had changed, a change of level this great would come up ${chance(ofLevel)}, a change of shape ${chance(ofShape)}. Each counts as beyond noise below 2.5 in 100; a change of less than 2\u202f% is left alone.`,
};

const chance = (share: number): string =>
  share < 0.01 ? 'less than once in 100' : `${String(Math.round(100 * share))} times in 100`;
