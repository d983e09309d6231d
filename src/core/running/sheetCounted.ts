import type { SheetForecast, KeptUpTo } from '../plan/sheetForecast.ts';
import type { PromiseWish } from '../reading/promise.ts';
import type { Foretold } from '../study/foretold.ts';
import { conditionsNow } from '../study/orderDefaults.ts';
import { nextSheetName, orderSoFar } from '../study/orderSoFar.ts';
import type { StartedOrder } from '../study/startedOrder.ts';
import type { RecordedTally, Study } from '../study/study.ts';

/** What was counted of the parts that were cut with one setting. */
export interface PartsCounted {
  readonly powerPct: number;
  readonly speedMmPerS: number;
  readonly parts: number;
  readonly hangs: number;
  readonly stays: number;
  readonly spoilt: number;
}

export interface SheetToCount {
  /** The main setting first. */
  readonly counted: readonly PartsCounted[];
  /** Absent: it was cut otherwise than planned, so that nothing was foretold of it. */
  readonly foretold?: Foretold;
  /** ISO 8601, UTC. */
  readonly at: string;
  /** One for each setting. */
  readonly ids: readonly string[];
}

/** What a plan foretells of its sheet, as it is kept with the count. */
export const foretoldOf = (
  { outOf100: promisedOutOf100 }: Pick<PromiseWish, 'outOf100'>,
  sheet: Pick<SheetForecast, 'outOf100' | 'sureOfPromisePct'>,
  { sureMmPerS, evenMmPerS, hardlyMmPerS }: KeptUpTo,
): Foretold => ({
  outOf100: Math.round(100 * sheet.outOf100) / 100,
  promisedOutOf100,
  surePct: Math.round(10 * sheet.sureOfPromisePct) / 10,
  ...(sureMmPerS === null ? {} : { sureMmPerS }),
  ...(evenMmPerS === null ? {} : { evenMmPerS }),
  ...(hardlyMmPerS === null ? {} : { hardlyMmPerS }),
});

/** The counts of an order's next sheet, one for each setting: the same kind of evidence as any order that is counted. */
export const talliesOfSheet = (
  study: Study,
  order: StartedOrder,
  { counted, foretold, at, ids }: SheetToCount,
): readonly RecordedTally[] => {
  const sheet = nextSheetName(order, orderSoFar(order, study.tallies));
  const { batch, air } = conditionsNow(study);
  return counted.flatMap(({ powerPct, speedMmPerS, parts, hangs, stays, spoilt }, i) => {
    const id = ids[i];
    if (parts === 0 || id === undefined) return [];
    return [
      {
        id,
        at,
        orderId: order.id,
        sheet,
        setting: { powerPct, speedMmPerS, passes: 1, ...(air === undefined ? {} : { air }) },
        out: parts - hangs - stays - spoilt,
        hangs,
        stays,
        spoilt,
        partLengthMm: order.partLengthMm,
        ...(batch === undefined ? {} : { batch }),
        ...(i > 0 || foretold === undefined ? {} : { foretold }),
      },
    ];
  });
};
