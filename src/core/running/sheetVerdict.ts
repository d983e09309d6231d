import { betaCdf } from '../../num/distributions.ts';
import { ewmaChart } from '../../num/ewma.ts';
import { normalQuantile } from '../../num/normal.ts';
import type { PromiseWish } from '../reading/promise.ts';
import { unlucky } from '../standing/ordersSay.ts';
import type { CountedSheet } from '../study/orderSoFar.ts';
import { alarmLimits } from '../watch/alarmLimits.ts';
import { foreseenLevel } from '../watch/foreseenLevel.ts';
import { countChances, expected, levelBelief } from '../watch/levelGrid.ts';
import { whatToLookAt, type LookAt } from '../watch/whatToLookAt.ts';

/**
 * What the sheet counted last says beside its setting. `fine`: as foretold. `luck`: more than foretold, as luck may have it.
 * `flawed-board`: far more spoilt parts than on the sheets before. `bad-sheet`: too bad for luck, and the sheets before were
 * not: this board, or something that has just happened. `drifting`: it has been going down for sheets.
 */
export const sheetVerdicts = ['fine', 'luck', 'flawed-board', 'bad-sheet', 'drifting'] as const;

export type SheetVerdictKind = (typeof sheetVerdicts)[number];

export interface SheetVerdict {
  readonly kind: SheetVerdictKind;
  /** Sound parts that did not come out at the sheet's main setting, and how many were foretold on average. */
  readonly notOut: number;
  readonly foretold: number;
  readonly spoilt: number;
  /** Chance in 100 of so many not out, or more, by what was foretold. */
  readonly chancePct: number;
  /** What to look at, cheapest first; nothing where nothing is the matter. */
  readonly looks: readonly LookAt[];
  /** Whether to look before another sheet is cut: far too bad for luck. */
  readonly lookFirst: boolean;
}

/** Spoilt parts are held against what the sheets before had, or one in a hundred; below this chance it is the board. */
const spoiltByChance = 0.01;
const leastSpoiltShare = 0.01;

/** Beyond this no score tells more. */
const farthestScore = 6;

interface Scored {
  readonly chance: number;
  readonly score: number;
  readonly mean: number;
}

/**
 * Judges the last of an order's sheets by what was foretold of each before it was cut: a binomial count over what is not known
 * of the level and of sheets. Going down for long shows in the weighted average of the scores, whose limits are those of kept
 * settings (`alarmLimits`). Undefined: nothing was counted, or nothing foretold. O(sheets), ~1 ms each.
 */
export const sheetVerdict = (
  promise: PromiseWish,
  sheets: readonly CountedSheet[],
): SheetVerdict | undefined => {
  const last = sheets.at(-1);
  const scores = sheets.flatMap((sheet) => {
    const scored = scoreOf(promise, sheet);
    return scored === undefined ? [] : [{ sheet, scored }];
  });
  const now = scores.at(-1);
  if (last === undefined || now?.sheet !== last) return undefined;
  const { hangs, stays } = last.tallies[0];
  const kind = kindOf(
    last,
    sheets.slice(0, -1),
    scores.map(({ scored }) => scored),
  );
  return {
    kind,
    notOut: hangs + stays,
    foretold: now.scored.mean,
    spoilt: last.spoilt,
    chancePct: 100 * now.scored.chance,
    looks: looksFor[kind],
    lookFirst:
      kind === 'drifting' || (kind === 'bad-sheet' && 100 * now.scored.chance < unlucky.runPct),
  };
};

const looksFor: Readonly<Record<SheetVerdictKind, readonly LookAt[]>> = {
  fine: [],
  luck: [],
  'flawed-board': whatToLookAt('wood'),
  'bad-sheet': whatToLookAt('unclear'),
  drifting: whatToLookAt('laser'),
};

const kindOf = (
  last: CountedSheet,
  before: readonly CountedSheet[],
  scores: readonly Scored[],
): SheetVerdictKind => {
  const now = scores.at(-1);
  if (now === undefined) return 'fine';
  if (100 * now.chance < unlucky.lastPct) return isDrifting(scores) ? 'drifting' : 'bad-sheet';
  if (isSpoiltBoard(last, before)) return 'flawed-board';
  const { hangs, stays } = last.tallies[0];
  return hangs + stays > Math.ceil(now.mean) ? 'luck' : 'fine';
};

/** The average was below its limit before this sheet, or it is and the sheet before was worse than foretold as well. */
const isDrifting = (scores: readonly Scored[]): boolean => {
  const { lambda, width } = alarmLimits;
  const all = scores.map(({ score }) => score);
  const { averages, exactHalfWidths } = ewmaChart(all, { lambda, width, target: 0, sigma: 1 });
  const isBelow = (i: number): boolean =>
    (averages[i + 1] ?? 0) < -(exactHalfWidths[i] ?? Infinity);
  const last = all.length - 1;
  return last >= 2 && isBelow(last) && (isBelow(last - 1) || (all[last - 1] ?? NaN) < -1);
};

const isSpoiltBoard = (
  { spoilt, parts }: CountedSheet,
  before: readonly CountedSheet[],
): boolean => {
  if (spoilt === 0) return false;
  const sum = (of: (sheet: CountedSheet) => number): number =>
    before.reduce((total, sheet) => total + of(sheet), 0);
  const share = Math.max(leastSpoiltShare, (sum((s) => s.spoilt) + 1) / (sum((s) => s.parts) + 30));
  // P(X ≥ k) of n trials: the regularised incomplete beta function.
  return betaCdf(share, spoilt, parts - spoilt + 1) < spoiltByChance;
};

const scoreOf = (promise: PromiseWish, { tallies: [main] }: CountedSheet): Scored | undefined => {
  const { foretold, out, hangs, stays, partLengthMm } = main;
  const parts = out + hangs + stays;
  if (foretold === undefined || parts === 0) return undefined;
  const { outOf100, promisedOutOf100, surePct } = foretold;
  const asked = { ...promise, outOf100: promisedOutOf100, partLengthMm };
  const belief = levelBelief(
    foreseenLevel({ setting: main.setting, promise: asked, outOf100Mean: outOf100, surePct }),
  );
  const groups = [{ lnFaster: 0, lengthMm: partLengthMm, parts, out }];
  const chances = countChances(
    { id: main.id, at: main.at, kind: 'order', groups, spoilt: 0 },
    partLengthMm,
  );
  const more = expected(belief, chances.more);
  const same = expected(belief, chances.same);
  const score = normalQuantile(Math.min(1 - 1e-12, Math.max(1e-12, more + 0.5 * same)));
  return {
    chance: Math.min(1, more + same),
    score: Math.max(-farthestScore, Math.min(farthestScore, score)),
    mean: expected(belief, chances.mean),
  };
};
