import { clopperPearson, type Interval } from '../../num/binomialInterval.ts';
import { betaCdf } from '../../num/distributions.ts';
import { unlucky } from '../standing/ordersSay.ts';
import type { ScoredSheet } from './sheetsToScore.ts';

/**
 * What the counts say of a promise. `kept`: the share that came out is surely no less. `broken`: it is surely less.
 * `fits`: neither. `too-few`: too few sheets to tell one from the other.
 */
export const promiseVerdicts = ['kept', 'fits', 'broken', 'too-few'] as const;

export type PromiseVerdict = (typeof promiseVerdicts)[number];

/** All sheets of one promise put together. */
export interface PromiseLine {
  readonly promisedOutOf100: number;
  readonly sheets: number;
  readonly parts: number;
  readonly out: number;
  readonly outOf100: number;
  /** 95 % sure, with parts of one sheet good or bad together. */
  readonly bandOf100: Interval;
  /** How many times fewer parts, independent of one another, would say as much. 1: parts fail one by one. */
  readonly designEffect: number;
  /** Sheets worse than the promise allows for by luck one time in twenty. */
  readonly worseSheets: number;
  /** Their share in 100, 95 % sure. */
  readonly worseBandPct: Interval;
  readonly verdict: PromiseVerdict;
}

/** Sheets of which about the same share was foretold, and what came. */
export interface CalibrationBin {
  readonly sheets: number;
  readonly parts: number;
  readonly foretoldOutOf100: number;
  readonly outOf100: number;
  readonly bandOf100: Interval;
}

/** What one workshop, one material or one machine says. */
export interface PromiseGroup {
  readonly by: 'all' | 'material' | 'machine';
  readonly name: string;
  /** The highest promise first. */
  readonly promises: readonly PromiseLine[];
  /** Rising. */
  readonly bins: readonly CalibrationBin[];
}

export interface PromiseScore {
  readonly sheets: number;
  readonly parts: number;
  /** All together first, then by material and by machine where there are several. */
  readonly groups: readonly PromiseGroup[];
}

const confidence = 0.95;

/** Fewer sheets tell nothing of how sheets differ. Common practice, no source. */
const leastSheets = 10;

/** So many failures a promise must let expect before a count can speak for it. Common practice, no source. */
const leastExpected = 3;

/** Ends of the bins, of 100. */
const binEnds = [90, 94, 96, 97.5, 98.5, 99.3] as const;

/** Holds what was promised against what came. O(sheets). */
export const scorePromises = (sheets: readonly ScoredSheet[]): PromiseScore => ({
  sheets: sheets.length,
  parts: sum(sheets, ({ parts }) => parts),
  groups:
    sheets.length === 0
      ? []
      : [
          groupOf('all', '', sheets),
          ...groupsBy('material', sheets, ({ material }) => material),
          ...groupsBy('machine', sheets, ({ machine }) => machine),
        ],
});

const groupsBy = (
  by: PromiseGroup['by'],
  sheets: readonly ScoredSheet[],
  nameOf: (sheet: ScoredSheet) => string,
): readonly PromiseGroup[] => {
  const groups = parted(sheets, nameOf);
  if (groups.size < 2) return [];
  return [...groups]
    .sort(([, one], [, other]) => other.length - one.length)
    .map(([name, own]) => groupOf(by, name, own));
};

const groupOf = (
  by: PromiseGroup['by'],
  name: string,
  sheets: readonly ScoredSheet[],
): PromiseGroup => ({
  by,
  name,
  promises: [...parted(sheets, ({ promisedOutOf100 }) => Number(promisedOutOf100.toFixed(1)))]
    .sort(([one], [other]) => other - one)
    .map(([promised, own]) => lineOf(promised, own)),
  bins: [
    ...parted(
      sheets,
      ({ foretoldOutOf100 }) => binEnds.filter((end) => foretoldOutOf100 >= end).length,
    ),
  ]
    .sort(([one], [other]) => one - other)
    .map(([, own]) => binOf(own)),
});

const lineOf = (promisedOutOf100: number, sheets: readonly ScoredSheet[]): PromiseLine => {
  const parts = sum(sheets, (sheet) => sheet.parts);
  const out = sum(sheets, (sheet) => sheet.out);
  const effect = designEffect(sheets);
  const band = bandOf(out, parts, effect);
  const fails = 1 - promisedOutOf100 / 100;
  const worse = sheets.filter((sheet) => isWorse(sheet, fails)).length;
  return {
    promisedOutOf100,
    sheets: sheets.length,
    parts,
    out,
    outOf100: (100 * out) / parts,
    bandOf100: band,
    designEffect: effect,
    worseSheets: worse,
    worseBandPct: percent(clopperPearson({ x: worse, n: sheets.length }, confidence)),
    verdict: verdictOf(band, promisedOutOf100, {
      sheets: sheets.length,
      expected: (fails * parts) / effect,
    }),
  };
};

const verdictOf = (
  [low, high]: Interval,
  promised: number,
  { sheets, expected }: { readonly sheets: number; readonly expected: number },
): PromiseVerdict => {
  // Enough failures speak for themselves, however few the sheets.
  if (high < promised && sheets >= leastSheets / 2) return 'broken';
  if (sheets < leastSheets || expected < leastExpected) return 'too-few';
  return low >= promised ? 'kept' : 'fits';
};

const binOf = (sheets: readonly ScoredSheet[]): CalibrationBin => {
  const parts = sum(sheets, (sheet) => sheet.parts);
  const out = sum(sheets, (sheet) => sheet.out);
  return {
    sheets: sheets.length,
    parts,
    foretoldOutOf100: sum(sheets, (sheet) => sheet.parts * sheet.foretoldOutOf100) / parts,
    outOf100: (100 * out) / parts,
    bandOf100: bandOf(out, parts, designEffect(sheets)),
  };
};

/**
 * How much more counts of whole sheets scatter than parts that fail one by one: Pearson's χ² over its degrees of freedom,
 * never below 1 (Rao & Scott 1992, Biometrics 48:577). One sheet tells nothing of it: 1.
 */
const designEffect = (sheets: readonly ScoredSheet[]): number => {
  const parts = sum(sheets, (sheet) => sheet.parts);
  const share = sum(sheets, (sheet) => sheet.out) / parts;
  if (sheets.length < 2 || share <= 0 || share >= 1) return 1;
  const chi2 = sum(
    sheets,
    ({ parts: n, out }) => (out - n * share) ** 2 / (n * share * (1 - share)),
  );
  return Math.max(1, chi2 / (sheets.length - 1));
};

/** Clopper and Pearson's band for as many parts as say as much one by one. */
const bandOf = (out: number, parts: number, effect: number): Interval =>
  percent(clopperPearson({ x: out / effect, n: parts / effect }, confidence));

const percent = ([low, high]: Interval): Interval => [100 * low, 100 * high];

/** P(X ≥ k) of n trials: the regularised incomplete beta function. */
const isWorse = ({ parts, out }: ScoredSheet, fails: number): boolean =>
  out < parts && 100 * betaCdf(fails, parts - out, out + 1) < unlucky.lastPct;

const sum = <T>(all: readonly T[], of: (one: T) => number): number =>
  all.reduce((total, one) => total + of(one), 0);

const parted = <T, K>(all: readonly T[], keyOf: (one: T) => K): ReadonlyMap<K, readonly T[]> => {
  const groups = new Map<K, T[]>();
  for (const one of all) {
    const key = keyOf(one);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [one]);
    else group.push(one);
  }
  return groups;
};
