import { counted } from '../terms/figures.ts';

/** Watching a proven setting, on the page of its entry in the book. */
export const watchText = {
  title: 'Does it still hold?',
  away: 'The server is not reached, so nobody can say whether it still holds.',
  picture: (points: number, alarms: number, changes: readonly string[]) =>
    [
      `How ${counted(points, 'count')} came out against what was foreseen${alarms === 0 ? ', all as foreseen' : `, ${counted(alarms, 'alarm')}`}.`,
      ...changes.map((change) => `Another ${change}.`),
    ].join(' '),
  machineFrom: (what: string, day: string) => `${what}, ${day}`,
  batchFrom: (batch: string, day: string) => `batch ${batch}, from ${day}`,
  better: 'better than foreseen',
  foreseen: 'as foreseen',
  alarmBelow: 'alarm once the line is here',
  key: {
    order: 'an order',
    strip: 'a check strip',
    line: 'the line: how it has been going',
    alarm: 'alarm',
  },
  oneByOne: 'Count by count',
  when: 'When',
  what: 'What',
  counted: (kind: 'order' | 'strip', batch: string | undefined) =>
    `${kind === 'order' ? 'Order' : 'Strip'}${batch === undefined ? '' : `, batch ${batch}`}`,
  notOut: 'Not out',
  foreseenNotOut: 'Foreseen',
  said: 'Says',
  pointSays: (alarm: boolean, score: number) =>
    alarm ? 'alarm' : score < -1.5 ? 'worse' : 'as foreseen',
  of: (notOut: number, parts: number) => `${String(notOut)} of ${String(parts)}`,
  how: 'How this is calculated',
  howMore: (orders: number) => [
    `An alarm without cause comes about once in ${String(orders)} orders.`,
    'Each count is scored by the chance of a worse one, by what the promise and the counts before it foresaw (a binomial count, with sheets that differ). Parts lost to a flaw of the sheet count for nothing; parts that needed the knife did not come out.',
    'Two charts watch the scores: a running average (newest weighs a quarter) and a cumulated shortfall (CUSUM, half a standard deviation forgiven each time). One count alone calls where chance gives it once in 2000.',
    'With orders of some 100 parts a setting that cuts a tenth slower is seen after about two orders, one that cuts a twentieth slower after about five; small orders take longer.',
  ],
  stripTitle: 'A new batch: cut a check strip',
  stripLead:
    'Six small shapes in the waste of the first sheet: the kept setting and faster ones up to where it gives out. Read with the thumb like any card, they say whether the setting stays.',
  stripOf: 'Cut it in',
  stripIn: {
    'new-batch': 'the new batch',
    reference: 'the reference sheet',
  },
  stripInMore: {
    'new-batch': 'Does the setting hold for it?',
    reference:
      'A sheet of the batch that the setting was proven on, kept for comparison. The same strip, the same day: it tells laser from wood.',
  },
  batch: 'Name of the new batch',
  batchHint: 'As on the delivery note, or the day it came.',
  thickness: 'Thickness, measured in several places',
  thicknessHint:
    'What it is sold as is only nominal. Left empty, the thickness in the book is taken.',
  make: 'Make the strip',
  strips: 'Check strips',
  rule: 'How a strip is judged, and how often that is right',
  stripLine: (of: 'reference' | 'new-batch', batch: string | undefined) =>
    of === 'reference' ? 'The reference sheet' : `Batch ${batch ?? 'not named'}`,
  read: 'Read it',
  open: 'Open it',
  toMachine: 'Take it to the machine',
  cause: 'Laser or wood?',
  causes: { laser: 'laser', wood: 'wood', both: 'both', neither: 'neither: chance' },
  share: (share: number) => `${String(Math.round(100 * share))}\u202f%`,
  causeWants:
    'For an answer, read a strip in the new batch and one in the reference sheet, cut the same day.',
  causeHow: 'What this rests on',
  causeHowMore:
    'Before the strips: laser 25, wood 30, both 10, neither 35 in 100 (judgement). A laser that changed loses speed more often than it gains, by some 12 %; batches differ by some 10 %. Two strips of six shapes seldom settle it: shares are what they say, and cutting both strips twice helps.',
  lookAt: 'What to look at, cheapest first',
};
