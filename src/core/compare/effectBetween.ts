import type { CutStudy, StudyCell } from '../cutmodel/cutStudy.ts';
import { compileStudy, type CompiledStudy } from '../cutmodel/compileStudy.ts';
import type { Posterior } from '../cutmodel/posterior.ts';
import { priors } from '../cutmodel/priors.ts';
import { settledPosterior } from '../cutmodel/settledPosterior.ts';
import { defaultPromise } from '../reading/promise.ts';
import { sheetOf, type TwoConditions } from './twoConditions.ts';

/**
 * The through-cut model with one more effect on ln v50: what the other condition adds to the one's.
 *
 *     ln v50(other) = ln v50(one) + effect        effect ~ N(0, 0.15²), as for air: common practice, no source
 */
export interface EffectBetween {
  readonly compiled: CompiledStudy;
  readonly posterior: Posterior;
  /** ln speed gained by the other condition, one entry a point of the posterior. */
  readonly effect: Float64Array;
  /** ln v50 of either condition at P0, for the batch cut last; of this posterior or a thinned one. */
  readonly lnV50Of: (side: 'one' | 'other', posterior: Posterior, point: number) => number;
}

/** Standard deviation of the prior of the effect: two in three conditions move the speed by less than 16 %. */
export const effectPriorSd = priors.airSd;

/** The two levels that stand for the conditions, whatever air the cells were cut with. */
const levels = { one: 'off', other: 'pump' } as const;

/**
 * Posterior of the effect between two conditions. The conditions take the place of the model's air levels; sheets and, where
 * batches are not what is compared, batches keep their own terms, so that a sheet cannot pose as the condition.
 * ~20 ms for 50 cells.
 */
export const effectBetween = (two: TwoConditions): EffectBetween => {
  const compiled = compileStudy(asOneStudy(two));
  const posterior = settledPosterior(compiled.model, priors.links);
  const isOneCommoner = compiled.airLevels[0] === levels.one;
  const level = posterior.air[0] ?? new Float64Array(posterior.count);
  return {
    compiled,
    posterior,
    effect: level.map((value) => (isOneCommoner ? value : -value)),
    lnV50Of: (side, at, i) =>
      (at.lnV50[i] ?? NaN) +
      (at.batch[compiled.current.batch]?.[i] ?? 0) +
      ((side === 'one') === isOneCommoner ? 0 : (at.air[0]?.[i] ?? 0)),
  };
};

const asOneStudy = (two: TwoConditions): CutStudy => ({
  machine: machineOf(two),
  stock: two.stock,
  cells: (['one', 'other'] as const).flatMap((side) =>
    two[side].map((cell): StudyCell => {
      const { batch, ...rest } = cell;
      const marked = { ...rest, air: levels[side] };
      // Where batches are compared, the effect is the whole of what lies between them.
      return two.differs === 'batch' || batch === undefined
        ? { ...marked, sheet: sheetOf(cell) }
        : { ...marked, batch };
    }),
  ),
  tallies: [],
  promise: defaultPromise,
  ask: {},
});

/** One tube's curve says nothing of another tube: two machines are compared at the power that is typed. */
const machineOf = ({ machine, otherMachine }: TwoConditions): CutStudy['machine'] => {
  if (otherMachine === undefined) return machine;
  const { maxPowerPct, speedRangeMmPerS } = machine;
  return { maxPowerPct, speedRangeMmPerS };
};
