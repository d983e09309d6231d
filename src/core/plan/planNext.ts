import { ceilingOfOrders } from '../cutmodel/countedOrders.ts';
import { fastestOutAt } from '../cutmodel/evidence.ts';
import type { Fit } from '../cutmodel/fit.ts';
import { levelAt } from '../cutmodel/levelAt.ts';
import { meanSdOf } from '../cutmodel/posterior.ts';
import { energyCeiling } from '../card/ceiling.ts';
import { powerLimit } from '../tube/deliveredPower.ts';
import type { Tally } from '../reading/tally.ts';
import { done, refused, type Outcome, type ProblemOf } from '../problem.ts';
import { boundsOf, keepsBounds, nothingSeen } from './bounds.ts';
import type { PlanCode } from '../problems/plan.ts';
import {
  playOut,
  settingNow,
  type FirstAct,
  type PlanTable,
  type PlayedOrder,
  type TrialCard,
} from './playOut.ts';
import { planPoints } from './planPoints.ts';
import type { PlanWish } from './planWish.ts';
import { meanOver } from './pricedSpeed.ts';
import { forecastSheet, keptUpTo, type KeptUpTo, type SheetForecast } from './sheetForecast.ts';
import { soundNotOut } from './soundNotOut.ts';
import { bestSpeed, speedGrid } from './speedGrid.ts';
import { threeCards, trialCards, type BelievedLevel } from './trialCards.ts';
import { trialSheets } from './trialSheets.ts';

/** The one next thing. */
export type PlanAct =
  | {
      readonly act: 'card';
      readonly cells: readonly {
        readonly powerPct: number;
        readonly speedMmPerS: number;
        /** Which setting of the card, from 0. */
        readonly rung: number;
      }[];
    }
  | {
      readonly act: 'sheet';
      readonly settings: readonly {
        readonly powerPct: number;
        readonly speedMmPerS: number;
        readonly parts: number;
      }[];
    }
  | { readonly act: 'done' };

/** A reason with its figures. */
export type PlanReason = ProblemOf<PlanCode>;

/** The next act of an order, why, and what is to be expected of what is left. */
export interface Plan {
  readonly next: PlanAct;
  readonly reason: PlanReason;
  readonly expected: {
    readonly minutes: number;
    /** Nine times in ten. */
    readonly minutesBand: readonly [low: number, high: number];
    /** Sound parts of 100 that do not come out. */
    readonly notOutOf100: number;
    /** Minutes more than three cards first and then one setting to the end; below 0: sooner. */
    readonly againstCardsFirstMinutes: number;
  };
  /** Of the next sheet; absent where the next act is another. */
  readonly sheet?: SheetForecast;
  /** Absent: the order is done. */
  readonly keeps?: KeptUpTo;
}

/** What a plan may weigh beside the setting that is cheapest now. Less than all of it is for finding out what each brings. */
export interface PlanWeighs {
  /** Cards. Without look-ahead: one small card first, where nothing is known. */
  readonly cards: boolean;
  /** A few parts of a sheet at faster settings. */
  readonly severalSettings: boolean;
  /** Acts by what they teach: each is played out to the end of the order. */
  readonly lookAhead: boolean;
}

const weighsAll: PlanWeighs = { cards: true, severalSettings: true, lookAhead: true };

/** Truths that each act is tried on: few for the short list, more for those on it. */
const firstTrials = 14;
const lastTrials = 60;
const onShortList = 4;

/** Nothing faster than so many of its standard deviations above the believed changeover is weighed. */
const aboveBelieved = 2;

/**
 * The next act of an order by what has been cut and counted so far: a small card, a sheet at one setting or several, or
 * nothing more. It is chosen for what it costs and for what it teaches, by playing the order out ({@link playOut}). It has
 * always an act. Refused only where nothing is known of the power. Deterministic. ~0.5 s where nothing is
 * known and cards are weighed, ~0.1 s once a sheet is counted, beside the fit.
 */
export const planNext = (
  fitted: Fit,
  wish: PlanWish,
  weighs: PlanWeighs = weighsAll,
): Outcome<Plan> => {
  if (wish.done >= wish.parts) return done(nothingLeft);
  const { study, evidence, compiled } = fitted;
  const limitPct = Math.floor(powerLimit(study.machine).powerPct + 1e-9);
  const powerPct = Math.min(study.ask.powerPct ?? compiled.p0Pct, limitPct);
  const points = planPoints(fitted, powerPct);
  if (points === null) return refused('power-not-known', { powerPct });
  const believed = believedLevel(fitted, powerPct);
  const heldMmPerS = heldSpeed(study.tallies);
  const [least, most] = study.machine.speedRangeMmPerS;
  const { mean, sd } = believed;
  const slowest = Math.min(most, Math.max(least, Math.exp(mean) / energyCeiling));
  const grid = speedGrid(points, wish, {
    slowest,
    fastest: Math.min(most, Math.exp(mean + aboveBelieved * sd)),
    // What is held but hotter than the ceiling allows is typed over.
    also: heldMmPerS === undefined || heldMmPerS < slowest ? [] : [heldMmPerS],
  });
  const table: PlanTable = {
    points,
    grid,
    wish,
    boundsAt: boundsOf(wish, study.promise, {
      outMmPerS: fastestOutAt(evidence, powerPct),
      ceilingMmPerS: ceilingOfOrders(study, powerPct),
    }),
    notOut: soundNotOut(study.tallies, { points, wish, powerPct }),
    typed: heldMmPerS === undefined ? -1 : grid.indexOf(heldMmPerS),
    then: 'climb',
  };
  const weights = new Float64Array(points.count).fill(1 / points.count);
  const left = wish.parts - wish.done;
  const fill = Math.min(wish.partsPerSheet, left);
  const bounds = table.boundsAt({ left, parts: fill, notOut: table.notOut });
  const best = bestSpeed(grid, weights, bounds, grid.speeds.length >> 1);
  const usual = settingNow({ ...table, bounds }, weights, { best, left });
  const parts = withSpares(wish, left, meanOver(weights, grid.priced(usual).goodShare));
  const cards =
    !weighs.cards || evidence.hasTally || evidence.hasHabit
      ? []
      : trialCards(points, wish.costS, believed, study.machine.speedRangeMmPerS);
  const usualSheet: FirstAct = { act: 'sheet', settings: [{ index: usual, parts }] };
  const sheets = trialSheets(table, weights, { usual, parts, left, bounds });
  const chosen = weighs.lookAhead
    ? bestOf(table, usualSheet, [
        ...sheets.filter(({ settings }) => weighs.severalSettings || settings.length === 1),
        ...cards,
      ])
    : judgedBy(
        table,
        lastTrials,
      )((study.cells.length > 0 ? undefined : cards.find(isPlainCard)) ?? usualSheet);
  const cardsFirst = playOut(
    {
      ...table,
      boundsAt: boundsOf({ ...wish, wish: 'promise' }, study.promise, nothingSeen),
      then: 'stay',
    },
    threeCards(points, wish.costS, believed, study.machine.speedRangeMmPerS),
    lastTrials,
  );
  const withoutCard = chosen.act.act === 'card' ? playOut(table, usualSheet, lastTrials) : [];
  const keeps = keepsBounds(weights, grid.priced(usual), bounds);
  return done({
    next: actSaid(chosen.act, table, powerPct),
    reason: reasonFor(chosen, table, { keeps, weights, withoutCard }),
    expected: {
      minutes: meanSeconds(chosen.played) / 60,
      minutesBand: bandOf(chosen.played),
      notOutOf100:
        (100 * chosen.played.reduce((sum, one) => sum + one.notOutShare, 0)) / chosen.played.length,
      againstCardsFirstMinutes: (meanSeconds(chosen.played) - meanSeconds(cardsFirst)) / 60,
    },
    ...sheetOf(chosen.act, table, weights, study.promise.outOf100 / 100),
    keeps: keptUpTo(grid, weights, study.promise),
  });
};

const nothingLeft: Plan = {
  next: { act: 'done' },
  reason: { code: 'plan-done', params: {} },
  expected: { minutes: 0, minutesBand: [0, 0], notOutOf100: 0, againstCardsFirstMinutes: 0 },
};

/** The last sheet holds a part more for each that is likely to be lost, where there is room: another sheet costs more. */
const withSpares = ({ partsPerSheet }: PlanWish, left: number, goodShare: number): number =>
  Math.min(partsPerSheet, Math.max(left, Math.round(left / goodShare)));

/** What the machine holds: of the sheet counted last, the setting at which most of its parts were cut. */
const heldSpeed = (tallies: readonly Tally[]): number | undefined => {
  const sheet = tallies.at(-1)?.sheet;
  const last = tallies.filter(
    (tally, i) => i === tallies.length - 1 || (sheet !== undefined && tally.sheet === sheet),
  );
  const parts = ({ out, hangs, stays, spoilt }: Tally): number => out + hangs + stays + spoilt;
  return last.reduce<Tally | undefined>(
    (most, tally) => (most && parts(most) >= parts(tally) ? most : tally),
    undefined,
  )?.setting.speedMmPerS;
};

/** Where the changeover of one shape is believed to lie: what is not known of it, and its scatter. */
const believedLevel = (fitted: Fit, powerPct: number): BelievedLevel => {
  const { posterior } = fitted;
  const level = levelAt(fitted, powerPct);
  const scatter = meanSdOf(posterior, (i) => posterior.sigma[i] ?? NaN).mean;
  return { mean: level.mean, sd: Math.hypot(level.sd, scatter) };
};

interface Judged {
  readonly act: FirstAct;
  readonly played: readonly PlayedOrder[];
}

const meanSeconds = (played: readonly PlayedOrder[]): number =>
  played.reduce((sum, one) => sum + one.seconds, 0) / played.length;

const judgedBy =
  (table: PlanTable, trials: number) =>
  (act: FirstAct): Judged => ({ act, played: playOut(table, act, trials) });

/** Eight shapes at four settings: the card that is cut where none is weighed against another. */
const isPlainCard = ({ rungs }: TrialCard): boolean =>
  rungs.length === 4 && rungs.every(({ cells }) => cells === 2);

/** The act with the least expected seconds, the usual one where another is no better. */
const bestOf = (table: PlanTable, usual: FirstAct, others: readonly FirstAct[]): Judged => {
  const judge = (trials: number) => judgedBy(table, trials);
  const bySeconds = (a: Judged, b: Judged): number => meanSeconds(a.played) - meanSeconds(b.played);
  const base = judge(lastTrials)(usual);
  const shortList = others.map(judge(firstTrials)).sort(bySeconds).slice(0, onShortList);
  const judged = shortList.map(({ act }) => judge(lastTrials)(act)).sort(bySeconds);
  const [best = base] = judged;
  return meanSeconds(best.played) < meanSeconds(base.played) ? best : base;
};

const bandOf = (played: readonly PlayedOrder[]): readonly [number, number] => {
  const minutes = played.map(({ seconds }) => seconds / 60).sort((a, b) => a - b);
  const at = (p: number): number => minutes[Math.round(p * (minutes.length - 1))] ?? NaN;
  return [at(0.05), at(0.95)];
};

const actSaid = (act: FirstAct, { grid }: PlanTable, powerPct: number): PlanAct =>
  act.act === 'card'
    ? {
        act: 'card',
        cells: act.rungs.flatMap(({ speedMmPerS, cells }, rung) =>
          Array.from({ length: cells }, () => ({ powerPct, speedMmPerS, rung })),
        ),
      }
    : {
        act: 'sheet',
        settings: act.settings.map(({ index, parts }) => ({
          powerPct,
          speedMmPerS: grid.priced(index).speedMmPerS,
          parts,
        })),
      };

const sheetOf = (
  act: FirstAct,
  { grid, points }: PlanTable,
  weights: Float64Array,
  promisedShare: number,
): Pick<Plan, 'sheet'> => {
  if (act.act === 'card') return {};
  const settings = act.settings.map(({ index, parts }) => ({ speed: grid.priced(index), parts }));
  return { sheet: forecastSheet(points, weights, settings, promisedShare) };
};

interface Circumstances {
  /** Whether the usual sheet keeps what was asked for. */
  readonly keeps: boolean;
  readonly weights: Float64Array;
  /** The order played out without the card. */
  readonly withoutCard: readonly PlayedOrder[];
}

const reasonFor = (
  { act, played }: Judged,
  { grid, typed }: PlanTable,
  { keeps, weights, withoutCard }: Circumstances,
): PlanReason => {
  if (act.act === 'card') {
    const savesMinutes = Math.round((meanSeconds(withoutCard) - meanSeconds(played)) / 60);
    return { code: 'plan-card-first', params: { savesMinutes } };
  }
  const [main, trial] = act.settings;
  const priced = grid.priced(main?.index ?? 0);
  const { speedMmPerS } = priced;
  const params = {
    speedMmPerS,
    notOutOf100: Number((100 * (1 - meanOver(weights, priced.outShare))).toFixed(1)),
  };
  if (!keeps) {
    return {
      code: grid.slowerIsSurer ? 'plan-nothing-keeps' : 'plan-nothing-keeps-since-it-welds',
      params,
    };
  }
  if (trial !== undefined) {
    const fasterMmPerS = grid.priced(trial.index).speedMmPerS;
    return { code: 'plan-try-faster', params: { ...params, parts: trial.parts, fasterMmPerS } };
  }
  if (typed < 0) return { code: 'plan-first-sheet', params };
  const heldMmPerS = grid.priced(typed).speedMmPerS;
  if (main?.index === typed) return { code: 'plan-stay', params };
  return {
    code: speedMmPerS > heldMmPerS ? 'plan-faster' : 'plan-slower',
    params: { ...params, heldMmPerS },
  };
};
