import { answerSpeed } from '../cutmodel/answerSpeed.ts';
import { fastestOutAt } from '../cutmodel/evidence.ts';
import type { Fit } from '../cutmodel/fit.ts';
import type { Setting } from '../machine/setting.ts';
import { stepNotSlower } from '../machine/speedSteps.ts';

/** What a check strip says of the proven setting on the sheet that it was cut from. */
export type StripVerdict =
  /** Nothing of it is read yet. */
  | { readonly kind: 'unread' }
  /** The proven setting holds here. */
  | {
      readonly kind: 'as-before';
      readonly setting: Setting;
      readonly surePct: number;
      /** Everything came out: it might go faster, how much nobody knows. */
      readonly allOut: boolean;
    }
  /** It does not, or faster would do; this one holds. */
  | {
      readonly kind: 'retune';
      readonly setting: Setting;
      /** How sure the promise is at the new setting. */
      readonly surePct: number;
      readonly which: 'slower' | 'faster';
      /** How sure it would be at the proven one. */
      readonly provenSurePct: number;
      /** Slower than any cell of the strip. */
      readonly guess: boolean;
    }
  /** The strip does not tell which speed would hold. */
  | { readonly kind: 'cut-a-card'; readonly provenSurePct: number };

/**
 * The rule, by how sure the promise is with the strip read and the earlier cells behind it. A strip is six cells and the
 * order that follows is counted, so it asks less certainty than a card: what each verdict keeps stands in the bench,
 * `npm run -s bench -- watch`.
 */
export const stripRule = {
  /** A new setting is the fastest that holds with this certainty, per cent; or with the promise's own, if that is less. */
  retuneSurePct: 85,
  /** The proven setting stays as long as it holds with this certainty and nothing failed at it. */
  stayPct: 60,
  /** A new setting less than so much faster is not worth typing, per cent. */
  fasterByPct: 3,
  /** Farther below the proven speed a strip is no guide, per cent. */
  slowerByAtMostPct: 20,
} as const;

/**
 * `found` is a fit of the strip's cells with the earlier ones as history, asked at the proven power. Of the reference sheet
 * nobody asks whether it could be cut faster: `offerFaster` false.
 */
export const stripVerdict = (fitted: Fit, proven: Setting, offerFaster = true): StripVerdict => {
  const { decision, evidence, posterior, study } = fitted;
  if (evidence.graded === 0) return { kind: 'unread' };
  const sureOf = (speed: number): number =>
    100 * decision.sureAt(proven.powerPct, speed, proven.minPowerPct);
  const provenSurePct = sureOf(proven.speedMmPerS);
  const unclear: StripVerdict = { kind: 'cut-a-card', provenSurePct };
  const cap = fastestOutAt(evidence, proven.powerPct, proven.passes);
  const surePct = Math.min(stripRule.retuneSurePct, study.promise.surePct);
  const holding = decision.fastestHolding(proven.powerPct, surePct);
  if (!posterior.converged || cap === null || holding === null) return unclear;
  const [least, most] = study.machine.speedRangeMmPerS;
  const fastest = answerSpeed(Math.min(holding, cap, most));
  const retuned = (which: 'slower' | 'faster'): StripVerdict => ({
    kind: 'retune',
    setting: { ...proven, speedMmPerS: fastest },
    surePct: sureOf(fastest),
    which,
    provenSurePct,
    guess: fastest < (evidence.slowestMmPerS ?? 0),
  });
  const allOut = evidence.notOutCells === 0;
  const worthTyping = proven.speedMmPerS * (1 + stripRule.fasterByPct / 100);
  if (offerFaster && !allOut && fastest >= worthTyping) return retuned('faster');
  if (provenSurePct >= stripRule.stayPct && !failedAtProven(fitted, proven))
    return { kind: 'as-before', setting: proven, surePct: provenSurePct, allOut };
  const slowest = Math.max(least, proven.speedMmPerS * (1 - stripRule.slowerByAtMostPct / 100));
  return !allOut && fastest >= slowest && fastest < proven.speedMmPerS
    ? retuned('slower')
    : unclear;
};

/** Whether something hung or stayed at the proven speed, as it was typed, or slower. */
const failedAtProven = ({ study }: Fit, { speedMmPerS }: Setting): boolean =>
  study.cells.some(
    (cell) =>
      cell.spoilt === undefined &&
      cell.grade !== undefined &&
      cell.grade !== 'out' &&
      cell.speedMmPerS <= stepNotSlower(speedMmPerS),
  );
