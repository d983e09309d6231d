import { compareMeterings, type CurveChange } from '../../core/metering/compareMeterings.ts';
import { whereToLook, type CutsNow, type WhereToLook } from '../../core/metering/whereToLook.ts';
import { done, type Outcome } from '../../core/problem.ts';
import type { Ports } from '../ports/ports.ts';
import { findMachineTest } from '../shared/findMachineTest.ts';

export interface MeteringCompared {
  readonly change: CurveChange;
  readonly look: WhereToLook;
}

/**
 * Holds a metering against an earlier one: whether the curve moved, and where to look, given whether parts still come
 * out. Refuses: `metering-not-found`, and what `compareMeterings` refuses.
 */
export const holdAgainst = async (
  { store }: Pick<Ports, 'store'>,
  asked: { readonly now: string; readonly before: string; readonly cuts?: CutsNow },
): Promise<Outcome<MeteringCompared>> => {
  const both = await store.read(async (session) => ({
    now: await findMachineTest(session, 'metering', asked.now),
    before: await findMachineTest(session, 'metering', asked.before),
  }));
  if (!both.now.ok) return both.now;
  if (!both.before.ok) return both.before;
  const change = compareMeterings(both.before.value, both.now.value);
  return change.ok
    ? done({ change: change.value, look: whereToLook(change.value, asked.cuts ?? 'unsaid') })
    : change;
};
