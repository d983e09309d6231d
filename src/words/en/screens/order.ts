import type { CountBand } from '../../../core/order/order.ts';
import { settingWords } from '../terms/figures.ts';
import { costText } from './cost.ts';

const range = ({ low, high }: CountBand): string =>
  low === high ? String(low) : `${String(low)} to ${String(high)}`;

/** An order of so many parts. */
export const orderText = {
  parts: 'An order of … parts',
  perSheet: 'Parts that one sheet holds',
  length: (mm: string) => `Each part ${mm} of cut, as the promise has it.`,
  expect: (parts: number, hang: CountBand, stay: CountBand) =>
    `Of ${String(parts)} parts expect ${range(hang)} to hang and ${range(stay)} not to come through.`,
  plan: (plan: number | null, parts: number) =>
    plan === null
      ? `No sensible number makes sure of ${String(parts)} that come out: cut slower.`
      : `Plan ${String(plan)}: then ${String(parts)} come out, 9 times in 10.`,
  withKnife: (plan: number) => `Freed with a knife, ${String(plan)} will do.`,
  flaws: (band: CountBand) =>
    `Flaws in the sheet are counted in: ${range(band)} of the parts meet one.`,
  soundOnly:
    'Flaws in the sheet are not counted: too little was cut to tell how many there are. Counting orders teaches it.',
  noPlace: 'Too few speeds were cut to look for a cheaper one.',
  noNone: (why: string) => `No setting promises none: ${why}`,
  calculating: 'Calculating the order…',
  broke: (message: string) => `The calculation broke: ${message}`,
  caption: (parts: number) =>
    `What ${String(parts)} good parts cost, by your figures under “${costText.title}”.`,
  way: 'Way to cut',
  hang: 'Hang',
  lost: 'Lost',
  plan10: 'Plan',
  cost: 'In all',
  ways: {
    chosen: 'As chosen above',
    cheapest: 'Costs least',
    none: 'No failures (50:50)',
  },
  setting: settingWords,
  count: (mean: number) => (mean < 0.05 ? '0' : mean.toFixed(mean < 9.95 ? 1 : 0)),
  noPlan: '–',
  money: costText.money,
  assumed:
    'Seconds of the cut, tube and sheet, the knife for a part that hangs, and a part cut again for one that is lost. Looked for among the speeds that were cut. Bands hold 9 times in 10; parts of one sheet are good or bad together.',
  promisesNone: (parts: number) =>
    `“No failures (50:50)” means an even chance that not one of ${String(parts)} fails, as sure as your promise.`,
};
