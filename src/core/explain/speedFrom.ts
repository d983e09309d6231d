import { answerSpeed } from '../cutmodel/answerSpeed.ts';
import type { CutStudy } from '../cutmodel/cutStudy.ts';
import { decisionOn } from '../cutmodel/decisionOn.ts';
import { evidenceIn, fastestOutAt } from '../cutmodel/evidence.ts';
import type { Fit, FittedStudy } from '../cutmodel/fit.ts';
import type { Posterior } from '../cutmodel/posterior.ts';
import { recommend, speedAt } from '../cutmodel/recommend.ts';
import type { Problem } from '../problem.ts';
import { otherFitsOf, type OtherFits } from './otherFits.ts';
import { smoothedWhole } from './reweigh.ts';

/** The answer against which others are held: the fastest speed that may be recommended at one power. */
export interface Baseline {
  readonly powerPct: number;
  readonly speedMmPerS: number;
  /** ln of the fastest speed at which the promise holds, as it was answered. */
  readonly lnHolding: number;
  /** The fits that there is time for; the posterior that others are held against. */
  readonly fits: OtherFits;
  readonly posterior: Posterior;
  /** ln of the speed by it, and by it with the tail of its weights smoothed. */
  readonly lnHoldingFine: number;
  readonly lnHoldingSmoothed: number;
  readonly paretoShape: number;
  readonly heldBy: 'promise' | 'fastest-out' | 'machine';
}

/** Null where the tube is dark at this power, or nothing came out there. */
export const baselineAt = (fitted: Fit, powerPct: number): Baseline | null => {
  const { study, evidence, compiled } = fitted;
  const holding = fitted.decision.fastestHolding(powerPct);
  const cap = fastestOutAt(evidence, powerPct);
  if (holding === null || cap === null) return null;
  const most = study.machine.speedRangeMmPerS[1];
  const least = Math.min(holding, cap, most);
  const fits = otherFitsOf(fitted);
  const posterior = fits.whole;
  const smoothed = smoothedWhole(posterior);
  const lnHoldingBy = (fine: Posterior): number =>
    Math.log(decisionOn(compiled, fine, study.promise).fastestHolding(powerPct) ?? holding);
  return {
    powerPct,
    speedMmPerS: answerSpeed(least),
    lnHolding: Math.log(holding),
    fits,
    posterior,
    lnHoldingFine: lnHoldingBy(posterior),
    lnHoldingSmoothed: lnHoldingBy(smoothed.posterior),
    paretoShape: smoothed.paretoShape,
    heldBy: least === holding ? 'promise' : least === cap ? 'fastest-out' : 'machine',
  };
};

interface OtherGround {
  readonly study: CutStudy;
  readonly posterior: Posterior;
  /** Whether the posterior's weights were smoothed. */
  readonly isSmoothed?: boolean;
}

interface OtherSpeed {
  readonly speedMmPerS: number | null;
  readonly shiftPct: number | null;
  /** By how many per cent the fastest speed at which the promise holds moves, whatever came out. */
  readonly holdingShiftPct: number;
  readonly reason?: Problem;
}

/** The answer that other data, or another posterior of the same, give at the baseline's power. */
export const speedFrom = (
  fitted: Fit,
  { powerPct, lnHolding, lnHoldingFine, lnHoldingSmoothed }: Baseline,
  { study, posterior, isSmoothed = false }: OtherGround,
): OtherSpeed => {
  const other: FittedStudy = {
    study: { ...study, ask: { powerPct } },
    compiled: fitted.compiled,
    posterior,
    decision: decisionOn(fitted.compiled, posterior, study.promise),
    evidence: evidenceIn(study),
  };
  const lnOther = Math.log(other.decision.fastestHolding(powerPct) ?? Number.NaN);
  // What smoothing and other points themselves move is taken off again.
  const lnNow = lnHolding + lnOther - (isSmoothed ? lnHoldingSmoothed : lnHoldingFine);
  const holdingShiftPct = 100 * Math.expm1(lnNow - lnHolding);
  const reason = whyNone(other, powerPct);
  if (reason !== null) return { speedMmPerS: null, shiftPct: null, holdingShiftPct, reason };
  const held = (lnSpeed: number, { evidence }: Pick<Fit, 'evidence'>): number =>
    Math.min(
      Math.exp(lnSpeed),
      fastestOutAt(evidence, powerPct) ?? Infinity,
      study.machine.speedRangeMmPerS[1],
    );
  const now = held(lnNow, other);
  return {
    speedMmPerS: answerSpeed(now),
    shiftPct: 100 * (now / held(lnHolding, fitted) - 1),
    holdingShiftPct,
  };
};

/** Why nothing would be recommended; the promise's shares, which take long, are reckoned only where something is missing. */
const whyNone = (other: FittedStudy, powerPct: number): Problem | null => {
  const { hasTally, hasHabit, outCells, notOutCells } = other.evidence;
  const isPlain =
    other.posterior.converged &&
    (hasTally || hasHabit || (outCells > 0 && notOutCells > 0)) &&
    speedAt(other, powerPct) !== null;
  if (isPlain) return null;
  const choice = recommend(other, []);
  return 'reason' in choice ? choice.reason : null;
};
