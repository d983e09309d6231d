import { orderVerdict, type OrderVerdict } from './countedOrders.ts';
import type { CutStudy } from './cutStudy.ts';

/** An order of a study that may only move the answer one way, and the study as it stood before it and after it. */
export interface OrderStage {
  readonly verdict: Exclude<OrderVerdict, 'open'>;
  readonly before: CutStudy;
  readonly after: CutStudy;
  /** Whether this order is the one right after the stage before. */
  readonly follows: boolean;
}

/** Each stage is one more posterior: the last so many are looked at, those before them are taken together. */
const mostStages = 4;
/** With so many orders none of them is great among the others, and a posterior takes seconds. */
const mostOrders = 40;

/** The last orders that failed clearly or were clean, in the order in which they came. */
export const orderStages = (study: CutStudy): readonly OrderStage[] => {
  const { tallies } = study;
  if (tallies.length > mostOrders) return [];
  const upTo = (end: number): CutStudy =>
    end === tallies.length ? study : { ...study, tallies: tallies.slice(0, end) };
  const said = tallies.flatMap((tally, at) => {
    const verdict = orderVerdict(tally, study);
    return verdict === 'open' ? [] : [{ at, verdict }];
  });
  return said.slice(-mostStages).map(({ at, verdict }, k, all) => ({
    verdict,
    before: upTo(at),
    after: upTo(at + 1),
    follows: k > 0 && all[k - 1]?.at === at - 1,
  }));
};
