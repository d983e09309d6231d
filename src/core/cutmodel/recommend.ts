import { leastWhole } from '../../num/leastWhole.ts';
import { describePower, powerLimit } from '../tube/deliveredPower.ts';
import type { ProblemOf } from '../problem.ts';
import { answerSpeed } from './answerSpeed.ts';
import { ceilingOfOrders } from './countedOrders.ts';
import type { ReasonCode } from '../problems/cutmodel.ts';
import { fastestOutAt } from './evidence.ts';
import { isReached, reachOf } from './reach.ts';
import type { Fit, FittedStudy, FitToAsk } from './fit.ts';
import type { LinePoint, Recommendation } from './fitAnswer.ts';

export interface NoRecommendation {
  readonly reason: ProblemOf<ReasonCode>;
}

/** Most points of the line. */
const mostPowers = 45;

/** Whole per cents from the least power at which something came out up to the limit; the asked power and those tried among them. */
const powersOfLine = ({ evidence, study }: FittedStudy, limitPct: number): readonly number[] => {
  const least = Math.ceil(Math.min(...evidence.out.map((cell) => cell.powerPct)) - 1e-9);
  const most = Math.floor(limitPct + 1e-9);
  if (!(least <= most)) return [];
  const step = Math.ceil((most - least + 1) / mostPowers);
  const powers = new Set<number>([most]);
  for (let power = least; power <= most; power += step) powers.add(power);
  const asked = study.ask.powerPct;
  const named = [
    ...evidence.out.map((spot) => spot.powerPct),
    ...(asked === undefined ? [] : [asked]),
  ];
  for (const power of named) if (power >= least && power <= limitPct) powers.add(power);
  return [...powers].sort((a, b) => a - b);
};

/**
 * The fastest speed that may be recommended at a power: it holds, something came out at it in as many passes, no order
 * failed at it, the machine can run it. `decision` is that for as many passes.
 */
export const speedAt = (
  found: FitToAsk & Pick<Fit, 'stages'>,
  powerPct: number,
  passes = 1,
): number | null => {
  const standing =
    passes === 1 ? standingAt(found, powerPct) : boundedHolding(found, powerPct, passes);
  if (standing === null) return null;
  const [least, most] = found.study.machine.speedRangeMmPerS;
  const ceiling = ceilingOfOrders(found.study, powerPct, passes);
  const speed = answerSpeed(Math.min(standing, ceiling, most));
  return speed >= least ? speed : null;
};

const boundedHolding = (
  { decision, evidence }: FitToAsk,
  powerPct: number,
  passes = 1,
): number | null => {
  const cap = fastestOutAt(evidence, powerPct, passes);
  const holding = decision.fastestHolding(powerPct);
  return cap === null || holding === null ? null : Math.min(holding, cap);
};

/**
 * What holds, orders taken one after another as they came: one that failed clearly never raises what stood before it, a
 * clean one never lowers it. The posterior alone may do either: twelve failures in two hundred also tell that the changeover
 * lies high, and a clean order far beyond what the cards let expect that shapes scatter widely.
 */
const standingAt = (found: FitToAsk & Pick<Fit, 'stages'>, powerPct: number): number | null => {
  const { stages = [] } = found;
  let standing: number | null = null;
  for (const { verdict, before, after, follows } of stages) {
    const was: number | null = follows ? standing : boundedHolding(before, powerPct);
    const is = boundedHolding(after, powerPct);
    standing =
      was === null || is === null
        ? (is ?? was)
        : verdict === 'failed'
          ? Math.min(was, is)
          : Math.max(was, is);
  }
  // Whatever came after the last of them moves it as it will.
  const isLast = stages.at(-1)?.after.study.tallies.length === found.study.tallies.length;
  return isLast ? standing : boundedHolding(found, powerPct);
};

/** The line of the fastest speed that holds, ascending in power, up to what machine and tube allow. */
export const lineOf = (found: FittedStudy): readonly LinePoint[] =>
  powersOfLine(found, powerLimit(found.study.machine).powerPct).flatMap((powerPct) => {
    const speedMmPerS = speedAt(found, powerPct);
    if (speedMmPerS === null) return [];
    const { currentMa } = describePower(found.study.machine, powerPct);
    return [{ powerPct, speedMmPerS, ...(currentMa === undefined ? {} : { currentMa }) }];
  });

/** The setting that answers what was asked, or why there is none. */
export const recommend = (
  found: FittedStudy,
  line: readonly LinePoint[],
): Recommendation | NoRecommendation => {
  const { study, evidence, posterior, compiled, decision } = found;
  const unanswerable = whyNothing(found);
  if (unanswerable) return { reason: unanswerable };
  if (!posterior.converged) {
    return {
      reason: {
        code: 'did-not-converge',
        params: { points: Math.round(posterior.effectivePoints) },
      },
    };
  }
  const { ask, promise } = study;
  const { powerPct: limitPct } = powerLimit(study.machine);
  let chosen: { readonly powerPct: number; readonly speedMmPerS: number } | undefined;
  if (ask.powerPct !== undefined) {
    const powerPct = Math.min(ask.powerPct, Math.floor(limitPct + 1e-9));
    if (compiled.lnPowerOf(powerPct) === null) {
      return { reason: { code: 'power-not-known', params: { powerPct } } };
    }
    if (fastestOutAt(evidence, powerPct) === null) {
      return { reason: { code: 'nothing-out-at-this-power', params: { powerPct } } };
    }
    const speedMmPerS = speedAt(found, powerPct);
    if (speedMmPerS === null) return { reason: tooSlow(found) };
    chosen = { powerPct, speedMmPerS };
  } else if (ask.speedMmPerS !== undefined) {
    const wanted = ask.speedMmPerS;
    if (wanted < study.machine.speedRangeMmPerS[0]) return { reason: tooSlow(found) };
    const least = leastPowerAt(found, wanted, limitPct);
    if (least === null) {
      return {
        reason: {
          code: 'no-power-holds-this-speed',
          params: { speedMmPerS: wanted, powerPct: Math.floor(limitPct) },
        },
      };
    }
    chosen = { powerPct: least, speedMmPerS: wanted };
  } else {
    chosen = line.reduce<LinePoint | undefined>(
      (best, point) => (best && best.speedMmPerS >= point.speedMmPerS ? best : point),
      undefined,
    );
    if (!chosen) return { reason: tooSlow(found) };
  }
  const { powerPct, speedMmPerS } = chosen;
  const air = study.cells.at(-1)?.air ?? study.tallies.at(-1)?.setting.air;
  return {
    powerPct,
    speedMmPerS,
    passes: 1,
    ...(air === undefined ? {} : { air }),
    outOf100: promise.outOf100,
    surePct: promise.surePct,
    outOf100Mean: 100 * decision.shareAt(powerPct, speedMmPerS),
    sureAtSpeedPct: 100 * decision.sureAt(powerPct, speedMmPerS),
    guess: !isReached(reachOf(study), { powerPct, speedMmPerS, passes: 1 }),
  };
};

/** Least whole per cent at which a speed may be recommended: more power never cuts less. */
const leastPowerAt = (found: FittedStudy, speedMmPerS: number, limitPct: number): number | null => {
  const enough = (powerPct: number): boolean =>
    (speedAt(found, powerPct) ?? -Infinity) >= speedMmPerS - 1e-9;
  const most = Math.floor(limitPct + 1e-9);
  return enough(most) ? leastWhole(most, enough) : null;
};

/** Where most cells count for nothing, that is the reason, or what welds back, and not the machine. */
const tooSlow = (found: FittedStudy): ProblemOf<ReasonCode> => {
  const { study, compiled } = found;
  if (compiled.welding !== undefined) return weldsBeforeItCuts(found);
  const [cells, leftOut] = [study.cells.length, compiled.unusableCells.length];
  return 2 * leftOut > cells
    ? { code: 'most-cells-left-out', params: { cells, leftOut } }
    : {
        code: 'slower-than-the-machine',
        params: { leastMmPerS: study.machine.speedRangeMmPerS[0] },
      };
};

/** Speeds among which the best is looked for, as shares of the fastest that came out. */
const sharesTried = Array.from({ length: 40 }, (_, i) => 0.97 ** i);

/** The speed at which most come out, at the asked power. */
const weldsBeforeItCuts = ({
  study,
  compiled,
  decision,
  evidence,
}: FittedStudy): ProblemOf<ReasonCode> => {
  const powerPct = study.ask.powerPct ?? compiled.p0Pct;
  const fastest =
    fastestOutAt(evidence, powerPct) ??
    Math.max(...evidence.out.map(({ speedMmPerS }) => speedMmPerS));
  const best = sharesTried
    .map((share) => answerSpeed(share * fastest))
    .map((speedMmPerS) => ({ speedMmPerS, comeOut: decision.shareAt(powerPct, speedMmPerS) }))
    .reduce((most, one) => (one.comeOut > most.comeOut ? one : most));
  return {
    code: 'welds-before-it-cuts',
    params: { powerPct, speedMmPerS: best.speedMmPerS, outOf100: Math.floor(100 * best.comeOut) },
  };
};

/** No answer without one out and one not-out; a tally or a habit may stand in for either. */
const whyNothing = ({ evidence }: FittedStudy): ProblemOf<ReasonCode> | null => {
  const { outCells, notOutCells, hasTally, hasHabit, fastestMmPerS, slowestMmPerS } = evidence;
  if (hasTally || hasHabit) {
    return outCells === 0 && evidence.out.length === 0
      ? { code: 'none-came-out', params: slowestMmPerS === null ? {} : { slowestMmPerS } }
      : null;
  }
  if (outCells + notOutCells === 0) return { code: 'nothing-read-yet', params: {} };
  if (notOutCells === 0 && fastestMmPerS !== null) {
    return { code: 'all-came-out', params: { fastestMmPerS, cells: outCells } };
  }
  if (outCells === 0) {
    return { code: 'none-came-out', params: slowestMmPerS === null ? {} : { slowestMmPerS } };
  }
  return null;
};
