/** Keep the promise: each sheet's own setting keeps it. Cheapest: the least seconds for the good parts, within `acceptNotOutOf100`. */
export const orderAims = ['promise', 'cheapest'] as const;

export type OrderAim = (typeof orderAims)[number];

/** What the work of an order costs, in seconds of the person and the machine. */
export interface PlanCosts {
  /** Laying down a card, cutting nothing yet. */
  readonly card: number;
  /** Typing one setting that the machine does not hold yet. */
  readonly type: number;
  /** One shape of a card, beside its cut: moving there. */
  readonly cell: number;
  /** Reading one shape of a card. */
  readonly read: number;
  /** One part, beside its cut. */
  readonly part: number;
  /** Freeing a part that hangs. */
  readonly knife: number;
  /** A part that is lost, beside cutting it again. */
  readonly recut: number;
  /** Counting a sheet. */
  readonly count: number;
}

/** Common practice, no source: one person's stop-watch, to be set by each workshop. */
export const usualPlanCosts: PlanCosts = {
  card: 120,
  type: 25,
  cell: 3,
  read: 5,
  part: 2,
  knife: 30,
  recut: 60,
  count: 20,
};

/** What is asked of a plan. */
export interface PlanWish {
  /** Good parts wanted in all. */
  readonly parts: number;
  /** Good parts there are already. */
  readonly done: number;
  readonly partsPerSheet: number;
  /** Length of cut of one part, in mm. */
  readonly partLengthMm: number;
  readonly wish: OrderAim;
  /** For the cheapest: no more sound parts of 100 than these should fail to come out. */
  readonly acceptNotOutOf100: number;
  readonly costS: PlanCosts;
}
