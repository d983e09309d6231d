import { inUnitsShown } from '../terms/inUnits.ts';
import { counted, powerWords, speedWords } from '../terms/figures.ts';

const share = (probability: number): string => `${Math.round(100 * probability).toString()}\u202f%`;

interface EarlierWords {
  readonly cells: number;
  readonly sheets: number;
  readonly parts: number;
  readonly orders: number;
}

/** `48 earlier cells from 4 other sheets and 200 parts of an earlier order`. */
const earlierWords = ({ cells, sheets, parts, orders }: EarlierWords): string =>
  [
    ...(cells > 0
      ? [`${counted(cells, 'earlier shape')} from ${counted(sheets, 'other sheet')}`]
      : []),
    ...(parts > 0 ? [`${counted(parts, 'part')} of ${counted(orders, 'earlier order')}`] : []),
  ].join(' and ');

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The model's own words, shown one click below the answer. */
export const modelText = {
  basis: (cells: number, parts: number, habit: boolean) =>
    `Calculated from ${[
      counted(cells, 'shape'),
      ...(parts > 0 ? [counted(parts, 'counted part')] : []),
      ...(habit ? ['what you run now'] : []),
    ].join(', ')}.`,
  why: 'Why this speed?',
  weighing: 'Weighing every shape…',
  earlier: 'What earlier sheets taught',
  earlierOptions: { with: 'lean on it', without: 'do without' },
  earlierUsed: (count: EarlierWords) =>
    `It leans on ${earlierWords(count)}, of this material, cut on this machine.`,
  earlierTeach:
    'They teach how widely shapes scatter, how wide the hanging band is, how often flaws come, and how speed goes with power. None of them stands in for a shape of this sheet.',
  earlierLeftOut: (count: EarlierWords) => `${sentence(earlierWords(count))} are left out.`,
  earlierUnsettled: (count: EarlierWords) =>
    `With ${earlierWords(count)} the calculation does not settle: they are left out.`,
  earlierOtherwise: (count: EarlierWords) =>
    `${sentence(earlierWords(count))} let expect another sheet than this one: they are left out.`,
  earlierNone: 'No other sheet of this material was read on this machine.',
  earlierAway:
    'The workshop’s computer has not said what earlier sheets taught: the answer does without.',
  law: 'Speed at the changeover rises with power and falls with thickness; shapes scatter about it. Everything is calculated on the logarithm of speed, so a scatter of 8 % means 8 % of the speed.',
  changeover: (powerPct: number) => `Half come out, at ${powerWords(powerPct)}`,
  speedRange: ({ mean, sd }: { readonly mean: number; readonly sd: number }) =>
    `${speedWords(round(Math.exp(mean)))} (${round(Math.exp(mean - 1.645 * sd)).toString()} to ${round(Math.exp(mean + 1.645 * sd)).toString()}, 90 %)`,
  exponent: 'Exponent of power',
  sigma: 'Scatter of shapes',
  hangBand: 'Width of the hanging band',
  sheetSd: 'Scatter from sheet to sheet',
  flaws: 'Flaws of the sheet per metre of cut',
  links: 'Tail of the scatter: normal, logistic, Student t',
  linkShares: (normal: number, logistic: number, student: number) =>
    `${share(normal)}, ${share(logistic)}, ${share(student)}`,
  converged: 'Calculation',
  convergence: (ok: boolean, points: number, effective: number) =>
    `${ok ? 'converged' : 'did not converge'}: ${counted(points, 'point')}, worth ${counted(effective, 'line')}`,
  nothing: 'nothing to go by',
  get priors() {
    return inUnitsShown(
      'Before any shape is read, the tool believes: a median changeover for the class of material and thickness, right within a factor of 1.8 two times in three; an exponent of power of 1 ± 0.3; a scatter of about 8 %; one flaw in thirty 60 mm shapes; one grade in a hundred misread.',
    );
  },
};

const round = (value: number): number => Number(value.toPrecision(3));
