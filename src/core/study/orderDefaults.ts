import type { Setting } from '../machine/setting.ts';
import { usualPlanCosts } from '../plan/planWish.ts';
import { partLengthOf } from './promiseOf.ts';
import type { StartedOrder } from './startedOrder.ts';
import type { Study } from './study.ts';

/** What an order may take over from what is known; what is absent has to be asked. */
export type OrderDefaults = Omit<StartedOrder, 'id' | 'startedAt' | 'partLengthMm' | 'nest'> & {
  readonly partLengthMm?: number;
};

/** A shop's common order. Common practice, no source. */
const usual = { parts: 300, partsPerSheet: 30, wish: 'promise', acceptNotOutOf100: 3 } as const;

/** What the order before was like, else what is usual; the part's length as the sheet has it; the power that is run. */
export const orderDefaults = (study: Study): OrderDefaults => {
  const { parts, partsPerSheet, wish, acceptNotOutOf100 } = study.orders?.at(-1) ?? usual;
  const costS = study.orders?.at(-1)?.costS ?? usualPlanCosts;
  const partLengthMm = study.orders?.at(-1)?.partLengthMm ?? partLengthOf(study);
  const powerPct = powerRun(study);
  return {
    parts,
    partsPerSheet,
    wish,
    acceptNotOutOf100,
    costS,
    ...(partLengthMm === undefined ? {} : { partLengthMm }),
    ...(powerPct === undefined ? {} : { powerPct }),
  };
};

const powerRun = (study: Study): number | undefined =>
  study.tallies.at(-1)?.setting.powerPct ??
  study.ask.powerPct ??
  study.habit?.powerPct ??
  study.cards.at(-1)?.rungs[0]?.setting.powerPct;

/** What counts of an order take over from what was cut of the sheet last, so that they are of one kind with it. */
export const conditionsNow = (
  study: Study,
): { readonly batch?: string; readonly air?: NonNullable<Setting['air']> } => {
  const tally = study.tallies.at(-1);
  const card = study.cards.at(-1);
  const batch = tally === undefined ? (card ?? study.stock).batch : tally.batch;
  const air = (tally?.setting ?? card?.rungs[0]?.setting)?.air;
  return { ...(batch === undefined ? {} : { batch }), ...(air === undefined ? {} : { air }) };
};
