import type { ProvenSetting } from '../book/provenSetting.ts';
import { beyondLimits, type FiringLimits } from '../card/firingLimits.ts';
import type { PromiseWish } from '../reading/promise.ts';
import { problemOf, type ProblemOf } from '../problem.ts';
import { countOrders } from './countedOrders.ts';
import type { Standing } from './standing.ts';

/** How a kept setting stands whose material is refused: no setting to run, no promise, the refusal as the reason. */
export const notToBeCut = (
  promise: PromiseWish,
  { params }: ProblemOf<'material-refused'>,
): Standing => ({ ...nothingToRun(promise), why: problemOf('not-to-be-cut', params) });

/**
 * How a kept setting stands that its machine may not be set to, as the machine is described by now: no setting to run, no promise.
 * A person's choice to go above rated current, noted when it was kept, stays one. undefined: the machine may be set to it.
 */
export const beyondItsMachine = (
  { setting, personsChoice }: Pick<ProvenSetting, 'setting' | 'personsChoice'>,
  machine: FiringLimits['machine'],
  promise: PromiseWish,
): Standing | undefined => {
  const beyond = beyondLimits(setting, 'through', { machine }).find(
    ({ limit }) => limit !== 'rated-current' || personsChoice === undefined,
  );
  const why = beyond === undefined ? undefined : whyBeyond(beyond);
  return why === undefined ? undefined : { ...nothingToRun(promise), why, next: 'cut-card' };
};

const whyBeyond = (
  beyond: ReturnType<typeof beyondLimits>[number],
): Standing['why'] | undefined => {
  switch (beyond.limit) {
    case 'machine':
      return problemOf('above-its-machine', { powerPct: beyond.powerPct, most: beyond.most });
    case 'rated-current':
      return problemOf('above-its-tube', { powerPct: beyond.powerPct, most: beyond.ratedPct });
    case 'speed': {
      const { speedMmPerS, least, most } = beyond;
      return problemOf('beyond-its-speeds', { speedMmPerS, least, most });
    }
    default:
      return undefined;
  }
};

const nothingToRun = (promise: PromiseWish): Omit<Standing, 'why'> => ({
  kind: 'not-known',
  isGuess: false,
  next: 'nothing-to-do',
  promise,
  counted: countOrders(promise, []),
});
