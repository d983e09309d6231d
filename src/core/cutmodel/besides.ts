import { leastWhole } from '../../num/leastWhole.ts';
import { answerSpeed, oneStepSurer } from './answerSpeed.ts';
import { forecast } from './decision.ts';
import { decisionOn } from './decisionOn.ts';
import type { Fit } from './fit.ts';
import type { FitAnswer, Recommendation } from './fitAnswer.ts';
import { speedAt } from './recommend.ts';

/** One step slower, where that is surer: what welds back is not. */
export const surerBeside = (
  { decision }: Pick<Fit, 'decision'>,
  { powerPct, speedMmPerS, sureAtSpeedPct }: Recommendation,
): Pick<FitAnswer, 'oneStepSurer'> => {
  const slower = forecast(decision, powerPct, oneStepSurer(speedMmPerS));
  return slower.sureOfPromisePct < sureAtSpeedPct ? {} : { oneStepSurer: slower };
};

/** What would do if an even chance of the promise were enough: shows how much of the setting is thin evidence. */
export const evenOddsBeside = (
  fitted: Fit,
  choice: Recommendation,
): Pick<FitAnswer, 'evenOdds'> => {
  const { study, decision } = fitted;
  if (study.ask.powerPct === undefined && study.ask.speedMmPerS !== undefined) {
    const wanted = study.ask.speedMmPerS;
    const powerPct = leastWhole(
      choice.powerPct,
      (power) => (decision.fastestHolding(power, 50) ?? 0) >= wanted,
    );
    return { evenOdds: { powerPct, speedMmPerS: wanted } };
  }
  const speed = decision.fastestHolding(choice.powerPct, 50);
  return speed === null
    ? {}
    : { evenOdds: { powerPct: choice.powerPct, speedMmPerS: answerSpeed(speed) } };
};

/** So many times as fast is worth a line. */
const worthSaying = 1.02;

/**
 * What holds on the board that lies there, where all cards were cut from that one: how boards differ is not paid for.
 * Absent where that is asked for anyway, where parts were counted (they came from boards of their own), or where it is hardly
 * faster.
 */
export const thisSheetBeside = (
  fitted: Fit,
  { powerPct, speedMmPerS: anywhere }: Recommendation,
): Pick<FitAnswer, 'onThisSheet'> => {
  const { study, compiled, posterior } = fitted;
  const { cells, tallies, promise } = study;
  const boards = new Set(cells.map(({ batch, sheet }) => JSON.stringify([batch, sheet])));
  const [first] = cells;
  if (promise.for === 'sheet' || tallies.length > 0) return {};
  if (boards.size !== 1 || first?.sheet === undefined) return {};
  const decision = decisionOn(compiled, posterior, { ...promise, for: 'sheet' });
  const speedMmPerS = speedAt({ ...fitted, decision }, powerPct);
  return speedMmPerS === null || speedMmPerS < worthSaying * anywhere
    ? {}
    : { onThisSheet: { powerPct, speedMmPerS } };
};

/** Whether the most passes that were tried pay, at the recommended power. */
export const passesBeside = (
  fitted: Fit,
  once: Recommendation | null,
): Pick<FitAnswer, 'morePasses'> => {
  const { study, compiled, posterior } = fitted;
  const passes = Math.max(1, ...study.cells.map((cell) => cell.passes));
  if (passes === 1 || !posterior.converged) return {};
  const powerPct = once?.powerPct ?? study.ask.powerPct ?? compiled.p0Pct;
  const decision = decisionOn(compiled, posterior, study.promise, passes);
  const speedMmPerS = speedAt({ ...fitted, decision }, powerPct, passes);
  if (speedMmPerS === null) return {};
  const quickerPct =
    once === null ? null : Math.round(100 * (speedMmPerS / passes / once.speedMmPerS - 1));
  return { morePasses: { passes, powerPct, speedMmPerS, quickerPct } };
};

/** The least power in corners that keeps the promise, where cells tell of corners; more of it never cuts less. */
export const cornersBeside = (
  { posterior, decision, study }: Fit,
  { powerPct, speedMmPerS: recommended }: Recommendation,
): Pick<FitAnswer, 'corners'> => {
  if (posterior.layout.cornersExponent < 0) return {};
  const speedMmPerS = oneStepSurer(recommended);
  const keeps = (minPowerPct: number): boolean =>
    100 * decision.sureAt(powerPct, speedMmPerS, minPowerPct) >= study.promise.surePct;
  return { corners: { speedMmPerS, leastMinPowerPct: leastWhole(powerPct, keeps) } };
};
