import type { Comparison } from '../../core/compare/compareConditions.ts';
import { conditionsOf, type ComparisonWish } from '../../core/compare/pieces.ts';
import { usualTellPct, usualWorthPct } from '../../core/compare/twoConditions.ts';
import { done, type Outcome } from '../../core/problem.ts';
import type { Study } from '../../core/study/study.ts';
import type { AskingPorts } from '../ports/ports.ts';
import { findStudy } from '../shared/findStudy.ts';

/** Absent: the figures that are usual. */
export type CompareWish = Omit<ComparisonWish, 'worthPct' | 'tellPct'> &
  Partial<Pick<ComparisonWish, 'worthPct' | 'tellPct'>>;

/**
 * Sets cards of stored studies beside each other as two conditions. Refuses: `study-not-found`, and what `conditionsOf`,
 * `compareTwo` and `Model` refuse.
 */
export const compareStored = async (
  { store, model }: Pick<AskingPorts, 'store' | 'model'>,
  wish: CompareWish,
): Promise<Outcome<Comparison>> => {
  const ids = [...new Set([...wish.one, ...wish.other].map(({ studyId }) => studyId))];
  const studies = await store.read(async (session): Promise<Outcome<readonly Study[]>> => {
    const found: Study[] = [];
    for (const id of ids) {
      const one = await findStudy(session, id);
      if (!one.ok) return one;
      found.push(one.value.study);
    }
    return done(found);
  });
  if (!studies.ok) return studies;
  const two = conditionsOf(studies.value, {
    worthPct: usualWorthPct,
    tellPct: usualTellPct,
    ...wish,
  });
  return two.ok ? model.ask('compareTwo', two.value, ids[0]) : two;
};
