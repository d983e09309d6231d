import { describePower, powerLimit } from '../machine/deliveredPower.ts';
import type { Problem } from '../problem.ts';
import type { ReasonCode } from './codes.ts';
import type { CutStudy } from './cutStudy.ts';
import { decisionOn, type Decision } from './decision.ts';
import { fastestOutAt } from './evidence.ts';
import { fit, type Fit } from './fit.ts';
import type {
  ChangeoverPoint,
  FitAnswer,
  LinePoint,
  Recommendation,
  SettingForecast,
} from './fitAnswer.ts';
import { meanSdOf, type Posterior } from './posterior.ts';
import { presentLnV50 } from './presentLevel.ts';
import { gradeOdds, remarksOn } from './remarks.ts';
import { answerSpeed, oneStepFaster, oneStepSurer } from './answerSpeed.ts';
import { warningsOn } from './warnings.ts';

/**
 * The answer to a study: posterior, recommended setting with its promise, the line of the fastest speed that holds,
 * warnings. Never a number without its reason: where nothing can be recommended, `recommended` is null and `reason`
 * says why. Pure and deterministic; ~20 ms for 24 cells.
 */
export const fitStudy = (study: CutStudy): FitAnswer => answerFrom(fit(study));

export const answerFrom = (found: Fit): FitAnswer => {
  const { study, compiled, posterior, decision } = found;
  const limit = powerLimit(study.machine);
  const line = lineOf(found, limit.powerPct);
  const choice = recommend(found, line, limit.powerPct);
  const { ask } = study;
  const odds = gradeOdds(found);
  const remarks = remarksOn(found, odds);
  const atPct = ask.powerPct ?? compiled.p0Pct;
  const lnPower = compiled.lnPowerOf(atPct) ?? 0;
  const present = presentLnV50(compiled, posterior);
  const column = (values: Float64Array) => meanSdOf(posterior, (i) => values[i] ?? 0);
  return {
    version: 1,
    posterior: {
      lnV50At: {
        powerPct: atPct,
        ...meanSdOf(
          posterior,
          (i) => (present[i] ?? 0) + (posterior.powerExponent[i] ?? 0) * lnPower,
        ),
      },
      powerExponent: column(posterior.powerExponent),
      sigma: column(posterior.sigma),
      hangBand: column(posterior.hangBand),
      flawsPerMetre: column(posterior.flawsPerMetre),
      sheetSd: column(posterior.sheetSd),
      ...(posterior.layout.cornersExponent < 0
        ? {}
        : { cornersExponent: column(posterior.cornersExponent) }),
    },
    ...('reason' in choice
      ? { recommended: null, reason: choice.reason }
      : {
          recommended: choice,
          oneStepSurer: forecast(decision, choice.powerPct, oneStepSurer(choice.speedMmPerS)),
          oneStepFaster: forecast(decision, choice.powerPct, oneStepFaster(choice.speedMmPerS)),
          ...evenOddsBeside(found, choice),
          ...cornersBeside(found, choice),
        }),
    ...passesBeside(found, 'reason' in choice ? null : choice),
    ...(ask.powerPct !== undefined && ask.speedMmPerS !== undefined
      ? { asked: forecast(decision, ask.powerPct, ask.speedMmPerS) }
      : {}),
    line,
    changeover: changeoverOf(found, limit.powerPct),
    powerLimit: limit,
    remarks,
    warnings: warningsOn(found, 'reason' in choice ? null : choice, remarks, odds, limit),
    convergence: {
      ok: posterior.converged,
      points: posterior.count,
      effectivePoints: Math.round(posterior.effectivePoints),
      linkProbabilities: {
        normal: linkProbability(posterior, 'normal'),
        logistic: linkProbability(posterior, 'logistic'),
        student3: linkProbability(posterior, 'student3'),
      },
    },
  };
};

const linkProbability = (posterior: Posterior, name: string): number =>
  posterior.links.find(({ link }) => link.name === name)?.probability ?? 0;

const forecast = (decision: Decision, powerPct: number, speedMmPerS: number): SettingForecast => ({
  powerPct,
  speedMmPerS,
  outOf100Mean: 100 * decision.shareAt(powerPct, speedMmPerS),
  sureOfPromisePct: 100 * decision.sureAt(powerPct, speedMmPerS),
});

/** Most points of the line. */
const mostPowers = 45;

/** Whole per cents from the least power at which something came out up to the limit; the asked power and those tried among them. */
const powersOfLine = ({ evidence, study }: Fit, limitPct: number): readonly number[] => {
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

/** The fastest speed that may be recommended at a power: it holds, something came out at it, the machine can run it. */
const speedAt = (found: Fit, powerPct: number, surePct?: number): number | null => {
  const { decision, evidence, study } = found;
  const cap = fastestOutAt(evidence, powerPct);
  if (cap === null) return null;
  const holding = decision.fastestHolding(powerPct, surePct);
  if (holding === null) return null;
  const [least, most] = study.machine.speedRangeMmPerS;
  const speed = answerSpeed(Math.min(holding, cap, most));
  return speed >= least ? speed : null;
};

const lineOf = (found: Fit, limitPct: number): readonly LinePoint[] =>
  powersOfLine(found, limitPct).flatMap((powerPct) => {
    const speedMmPerS = speedAt(found, powerPct);
    if (speedMmPerS === null) return [];
    const { currentMa } = describePower(found.study.machine, powerPct);
    return [{ powerPct, speedMmPerS, ...(currentMa === undefined ? {} : { currentMa }) }];
  });

const recommend = (
  found: Fit,
  line: readonly LinePoint[],
  limitPct: number,
): Recommendation | { readonly reason: Problem & { readonly code: ReasonCode } } => {
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
    if (speedMmPerS === null) return { reason: tooSlow(study) };
    chosen = { powerPct, speedMmPerS };
  } else if (ask.speedMmPerS !== undefined) {
    const wanted = ask.speedMmPerS;
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
    if (!chosen) return { reason: tooSlow(study) };
  }
  const { powerPct, speedMmPerS } = chosen;
  return {
    powerPct,
    speedMmPerS,
    passes: 1,
    outOf100: promise.outOf100,
    surePct: promise.surePct,
    outOf100Mean: 100 * decision.shareAt(powerPct, speedMmPerS),
    sureAtSpeedPct: 100 * decision.sureAt(powerPct, speedMmPerS),
    guess: evidence.slowestMmPerS !== null && speedMmPerS < evidence.slowestMmPerS - 1e-9,
  };
};

/** Least whole per cent at which a speed may be recommended: by halving, since more power never cuts less. */
const leastPowerAt = (found: Fit, speedMmPerS: number, limitPct: number): number | null => {
  const enough = (powerPct: number): boolean =>
    (speedAt(found, powerPct) ?? 0) >= speedMmPerS - 1e-9;
  let low = 0;
  let high = Math.floor(limitPct + 1e-9);
  if (!enough(high)) return null;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (enough(middle)) high = middle;
    else low = middle;
  }
  return high;
};

const tooSlow = ({ machine }: CutStudy): Problem & { readonly code: ReasonCode } => ({
  code: 'slower-than-the-machine',
  params: { leastMmPerS: machine.speedRangeMmPerS[0] },
});

/** No answer without one out and one not-out; a tally or a habit may stand in for either. */
const whyNothing = ({ evidence }: Fit): (Problem & { readonly code: ReasonCode }) | null => {
  const { outCells, notOutCells, hasTally, hasHabit, fastestMmPerS, slowestMmPerS } = evidence;
  if (hasTally || hasHabit) {
    return outCells === 0 && evidence.out.length === 0
      ? { code: 'none-came-out', params: { slowestMmPerS: slowestMmPerS ?? 0 } }
      : null;
  }
  if (outCells + notOutCells === 0) return { code: 'nothing-read-yet', params: {} };
  if (notOutCells === 0) {
    return { code: 'all-came-out', params: { fastestMmPerS: fastestMmPerS ?? 0, cells: outCells } };
  }
  if (outCells === 0) {
    return { code: 'none-came-out', params: { slowestMmPerS: slowestMmPerS ?? 0 } };
  }
  return null;
};

/** What would do if an even chance of the promise were enough: shows how much of the setting is thin evidence. */
const evenOddsBeside = (found: Fit, choice: Recommendation): Pick<FitAnswer, 'evenOdds'> => {
  const { study, decision } = found;
  if (study.ask.powerPct === undefined && study.ask.speedMmPerS !== undefined) {
    let low = 0;
    let high = choice.powerPct;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if ((decision.fastestHolding(middle, 50) ?? 0) >= study.ask.speedMmPerS) high = middle;
      else low = middle;
    }
    return { evenOdds: { powerPct: high, speedMmPerS: study.ask.speedMmPerS } };
  }
  const speed = decision.fastestHolding(choice.powerPct, 50);
  return speed === null
    ? {}
    : { evenOdds: { powerPct: choice.powerPct, speedMmPerS: answerSpeed(speed) } };
};

const passesBeside = (
  { study, compiled, posterior, evidence }: Fit,
  once: Recommendation | null,
): Pick<FitAnswer, 'morePasses'> => {
  const passes = Math.max(1, ...study.cells.map((cell) => cell.passes));
  if (passes === 1 || !posterior.converged) return {};
  const powerPct = once?.powerPct ?? study.ask.powerPct ?? compiled.p0Pct;
  const cap = fastestOutAt(evidence, powerPct, passes);
  const holding = decisionOn(compiled, posterior, study.promise, passes).fastestHolding(powerPct);
  if (cap === null || holding === null) return {};
  const [least, most] = study.machine.speedRangeMmPerS;
  const speedMmPerS = answerSpeed(Math.min(holding, cap, most));
  if (speedMmPerS < least) return {};
  const quickerPct =
    once === null ? null : Math.round(100 * (speedMmPerS / passes / once.speedMmPerS - 1));
  return { morePasses: { passes, powerPct, speedMmPerS, quickerPct } };
};

/** By halving: more power in corners never cuts less. */
const cornersBeside = (
  { posterior, decision, study }: Fit,
  { powerPct, speedMmPerS: recommended }: Recommendation,
): Pick<FitAnswer, 'corners'> => {
  if (posterior.layout.cornersExponent < 0) return {};
  const speedMmPerS = oneStepSurer(recommended);
  let low = 0;
  let high = powerPct;
  while (high - low > 1) {
    const middle = Math.ceil((low + high) / 2);
    if (100 * decision.sureAt(powerPct, speedMmPerS, middle) >= study.promise.surePct)
      high = middle;
    else low = middle;
  }
  return { corners: { speedMmPerS, leastMinPowerPct: high } };
};

const changeoverOf = (found: Fit, limitPct: number): readonly ChangeoverPoint[] => {
  const { study, decision } = found;
  const powers = study.cells.map((cell) => cell.powerPct);
  const asked = study.ask.powerPct ?? found.compiled.p0Pct;
  const low = Math.max(1, Math.floor(Math.min(asked, ...powers) - 8));
  const high = Math.min(Math.floor(limitPct), Math.ceil(Math.max(asked, ...powers) + 8));
  const step = Math.max(1, Math.round((high - low) / 12));
  const points: ChangeoverPoint[] = [];
  for (let powerPct = low; powerPct <= high; powerPct += step) {
    const v50MmPerS = decision.v50Quantile(powerPct, 0.5);
    const lowMmPerS = decision.v50Quantile(powerPct, 0.05);
    const highMmPerS = decision.v50Quantile(powerPct, 0.95);
    if (v50MmPerS !== null && lowMmPerS !== null && highMmPerS !== null) {
      points.push({ powerPct, v50MmPerS, lowMmPerS, highMmPerS });
    }
  }
  return points;
};
