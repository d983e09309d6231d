import type { Comparison, SideRead } from '../../core/compare/compareConditions.ts';
import type { ExactBetween } from '../../core/compare/exactBetween.ts';
import type { Difference } from '../../core/compare/twoConditions.ts';
import type { Air } from '../../core/machine/air.ts';
import { counted, powerWords, pressureWords, speedWords } from './terms/figures.ts';

/** What the two conditions are called in a sentence: “the other lens”. */
export interface SideNames {
  readonly one: string;
  readonly other: string;
}

const usual: Readonly<Record<Difference, SideNames>> = {
  air: { one: 'the first air', other: 'the other air' },
  lens: { one: 'the first lens', other: 'the other lens' },
  mirrors: { one: 'the mirrors as they were', other: 'the cleaned mirrors' },
  batch: { one: 'the first batch', other: 'the other batch' },
  machine: { one: 'the first machine', other: 'the other machine' },
  other: { one: 'the first condition', other: 'the other condition' },
};

const airNamed = (air: Air): string => {
  if (air === 'off') return 'air off';
  return air === 'pump' ? 'air from the pump' : `air at ${pressureWords(air.kPa)}`;
};

const nameOf = (differs: Difference, { air, batch, machine }: SideRead): string | undefined => {
  if (differs === 'air') return air === undefined ? undefined : airNamed(air);
  if (differs === 'batch') return batch === undefined ? undefined : `batch ${batch}`;
  return differs === 'machine' ? machine : undefined;
};

/** By what the cells say where they say two different things, else by what is usual. */
const names = ({ differs, read }: Pick<Comparison, 'differs' | 'read'>): SideNames => {
  const [one, other] = [nameOf(differs, read.one), nameOf(differs, read.other)];
  return one === undefined || other === undefined || one === other
    ? usual[differs]
    : { one, other };
};

const gap = '\u202f';
const pct = (value: number): string => `${String(Math.abs(Math.round(value)))}${gap}%`;
const toldPct = (value: number): string => `${String(value)}${gap}%`;

const outOf = (chance: number): string => {
  if (chance > 0.995) return 'more than 99 in 100';
  return chance < 0.005 ? 'less than 1 in 100' : `${String(Math.round(100 * chance))} in 100`;
};

const way = (gainPct: number): string => (gainPct < 0 ? 'slower' : 'faster');

/** “between 1 and 11 %”, or with both ways where they differ: “between 3 % slower and 9 % faster”. */
const between = (fromPct: number, toPct: number, said: string): string => {
  const [from, to] = [Math.round(fromPct), Math.round(toPct)];
  return from * to >= 0 && way(from + to) === said
    ? `between ${String(Math.min(Math.abs(from), Math.abs(to)))} and ${pct(Math.max(Math.abs(from), Math.abs(to)))}`
    : `between ${pct(from)} ${way(from)} and ${pct(to)} ${way(to)}`;
};

/** “With more air you may cut 6 % faster (between 1 and 11 %); 92 in 100 that it is more than 2 %.” */
const sentence = (comparison: Comparison, { one, other }: SideNames): string => {
  const { gainPct, chances, worthPct } = comparison;
  const middle = Math.round(gainPct.middle);
  if (chances.neither > alikeFrom)
    return `With ${other} you cut as fast as with ${one}: ${outOf(chances.neither)} that they differ by less than ${toldPct(worthPct)}.`;
  if (middle === 0)
    return `No difference between ${one} and ${other} can be told yet: with ${other} it is ${between(gainPct.low, gainPct.high, 'neither')}.`;
  const said = way(middle);
  const chance = middle > 0 ? chances.gains : chances.loses;
  const verb = middle > 0 ? 'you may cut' : 'you must cut';
  return `With ${other} ${verb} ${pct(middle)} ${said} than with ${one} (${between(gainPct.low, gainPct.high, said)}); ${outOf(chance)} that it is more than ${toldPct(worthPct)}.`;
};

const alikeFrom = 0.9;

/** Whether the figure leaves room for “no difference”. */
const standing = ({ gainPct, chances }: Comparison): string => {
  if (gainPct.low > 0 || gainPct.high < 0)
    return 'There is a difference: the range does not reach “no difference”.';
  return chances.neither > alikeFrom
    ? 'There is no difference worth having.'
    : 'It is not settled: the range still holds “no difference”.';
};

const chanceWords = (p: number): string => {
  if (p > 0.995) return 'every time';
  const times = 1 / p;
  if (times < 3) return `${String(Math.round(100 * p))} times in 100`;
  const rounded = times < 20 ? Math.round(times) : Number(times.toPrecision(1));
  return `1 time in ${String(rounded)}`;
};

const figure = (p: number): string =>
  p < 0.0001 ? 'p below 0.0001' : `p = ${String(Number(p.toPrecision(2)))}`;

/** The exact test in plain words. */
const exact = (test: ExactBetween, { one, other }: SideNames): string => {
  switch (test.kind) {
    case 'paired': {
      const split = test.onlyOneOut + test.onlyOtherOut;
      const left =
        test.unpaired > 0
          ? ` ${counted(test.unpaired, 'shape')} had no partner and were left out.`
          : '';
      return `Of ${counted(test.pairs, 'pair')} of shapes at one setting each, ${String(split)} ended differently: ${String(test.onlyOtherOut)} came out only with ${other}, ${String(test.onlyOneOut)} only with ${one}. Were the two alike, so uneven a split would come by chance ${chanceWords(test.p)} (McNemar’s exact test, ${figure(test.p)}).${left}`;
    }
    case 'unpaired': {
      const { a, b, c, d } = test.table;
      return `At the one setting that was cut under both, ${String(c)} of ${String(c + d)} came out with ${other} and ${String(a)} of ${String(a + b)} with ${one}. Were the two alike, so uneven a split would come by chance ${chanceWords(test.p)} (Fisher’s exact test, ${figure(test.p)}).`;
    }
    case 'no-difference-seen':
      return `All ${counted(test.pairs, 'pair')} of shapes at one setting ended alike, so the exact test says nothing.`;
    case 'no-setting-in-common':
      return 'No setting was cut under both conditions, so there is no test without a model. The card below has the same settings for both.';
  }
};

const cellsMore = ({ settling, tellPct }: Comparison): string => {
  const { cellsASide, moreASide } = settling;
  const goal = `would tell a difference of ${toldPct(tellPct)} from none, 8 times in 10`;
  if (cellsASide === null)
    return `Even 400 shapes a side on one sheet would not surely tell a difference of ${toldPct(tellPct)} from none: the shapes scatter too much, or too little is known of the scatter yet.`;
  if (moreASide === 0)
    return `The shapes that were read are enough to tell a difference of ${toldPct(tellPct)} from none, 8 times in 10.`;
  const afresh = `${counted(cellsASide, 'shape')} a side on one sheet, cut afresh, ${goal}`;
  return moreASide === null || moreASide > 0.9 * cellsASide
    ? `${afresh}.`
    : `${counted(moreASide, 'more shape')} a side on one sheet ${goal}. (${afresh}.)`;
};

/** What cells on two sheets could do. */
const ownSheets = ({ settling }: Comparison): string =>
  settling.onOwnSheets === null
    ? 'With a sheet for each condition no number of shapes would do it: the sheets themselves differ too much.'
    : `With a sheet for each condition it would take ${counted(settling.onOwnSheets, 'shape')} a side.`;

/** The card that would settle it, in a line. */
const card = ({ settling }: Comparison): string => {
  const { settings } = settling;
  const speeds = settings.map(({ speedMmPerS }) => speedWords(speedMmPerS));
  const [first] = settings;
  return first === undefined
    ? 'No such card fits the speeds of the machine.'
    : `${powerWords(first.powerPct)} at ${speeds.join(', ')}`;
};

/** A comparison in sentences; also for the program and the server. */
export const compareVerdictText = {
  names,
  sentence,
  standing,
  exact,
  cellsMore,
  ownSheets,
  card,
} as const;

/** The sentences of a comparison together, by the names that somebody gave or the usual ones. */
export const comparisonSaid = (comparison: Comparison, named: Partial<SideNames> = {}) => {
  const called = { ...names(comparison), ...named };
  return {
    sentence: sentence(comparison, called),
    exact: exact(comparison.exact, called),
    howMany: `${cellsMore(comparison)} ${ownSheets(comparison)}`,
    card: card(comparison),
  };
};
