import type { CutStudy } from '../cutmodel/cutStudy.ts';
import type { PlanWish } from '../plan/planWish.ts';
import type { StartedOrder } from './startedOrder.ts';
import type { RecordedTally, Study } from './study.ts';
import { toCutStudy } from './toCutStudy.ts';

/** One sheet of an order that was counted: a count for each setting that it was cut with. */
export interface CountedSheet {
  /** From 1. */
  readonly number: number;
  /** The sheet's name in its counts. */
  readonly sheet: string;
  /** The most parts first. Never empty. */
  readonly tallies: readonly [RecordedTally, ...RecordedTally[]];
  readonly parts: number;
  readonly out: number;
  readonly hangs: number;
  readonly stays: number;
  readonly spoilt: number;
}

/** How far an order is. */
export interface OrderSoFar {
  /** Oldest first. */
  readonly sheets: readonly CountedSheet[];
  /** Parts that are good: out, or freed with a knife. */
  readonly good: number;
  readonly left: number;
  readonly isDone: boolean;
}

/** Puts an order's counts together, sheet by sheet. O(counts). */
export const orderSoFar = (order: StartedOrder, tallies: readonly RecordedTally[]): OrderSoFar => {
  const bySheet = new Map<string, RecordedTally[]>();
  for (const tally of tallies) {
    if (tally.orderId !== order.id) continue;
    const sheet = tally.sheet ?? tally.id;
    const known = bySheet.get(sheet);
    if (known === undefined) bySheet.set(sheet, [tally]);
    else known.push(tally);
  }
  const sheets = [...bySheet].flatMap(([sheet, counts], i) => sheetOf(i + 1, sheet, counts));
  const sum = (of: (sheet: CountedSheet) => number): number =>
    sheets.reduce((total, each) => total + of(each), 0);
  const good = sum(({ out, hangs }) => out + hangs);
  const left = Math.max(0, order.parts - good);
  return {
    sheets,
    good,
    left,
    isDone: left === 0 || order.endedAt !== undefined,
  };
};

const sheetOf = (
  number: number,
  sheet: string,
  counts: readonly RecordedTally[],
): readonly CountedSheet[] => {
  const [main, ...others] = counts.toSorted((a, b) => partsOf(b) - partsOf(a));
  if (main === undefined) return [];
  const sum = (of: (tally: RecordedTally) => number): number =>
    counts.reduce((total, tally) => total + of(tally), 0);
  return [
    {
      number,
      sheet,
      tallies: [main, ...others],
      parts: sum(partsOf),
      out: sum(({ out }) => out),
      hangs: sum(({ hangs }) => hangs),
      stays: sum(({ stays }) => stays),
      spoilt: sum(({ spoilt }) => spoilt),
    },
  ];
};

const partsOf = ({ out, hangs, stays, spoilt }: RecordedTally): number =>
  out + hangs + stays + spoilt;

/** What is asked of the plan of an order, by how far it is. */
export const planWishOf = (order: StartedOrder, { good }: OrderSoFar): PlanWish => {
  const { parts, partsPerSheet, partLengthMm, wish, acceptNotOutOf100, costS } = order;
  return {
    parts,
    partsPerSheet,
    partLengthMm,
    wish,
    acceptNotOutOf100,
    costS,
    done: Math.min(parts, good),
  };
};

/** The study as an order asks it: at the order's own power, for its own part. */
export const studyOfOrder = (study: Study, order: StartedOrder): CutStudy => {
  const cut = toCutStudy(study);
  const { powerPct, partLengthMm } = order;
  return {
    ...cut,
    promise: { ...cut.promise, partLengthMm },
    ask: powerPct === undefined ? cut.ask : { powerPct },
  };
};

/** The name of an order's next sheet: no other sheet of its study has it. */
export const nextSheetName = (order: StartedOrder, { sheets }: OrderSoFar): string => {
  const taken = new Set(sheets.map(({ sheet }) => sheet));
  for (let number = sheets.length + 1; ; number += 1) {
    const name = `order ${order.id}, sheet ${String(number)}`;
    if (!taken.has(name)) return name;
  }
};

/** The order of a study that is not done yet, the last started first; else the last one. */
export const runningOrder = (
  orders: readonly StartedOrder[],
  tallies: readonly RecordedTally[],
): StartedOrder | undefined =>
  orders.findLast((order) => !orderSoFar(order, tallies).isDone) ?? orders.at(-1);
