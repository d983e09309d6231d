import type { OrderAim, PlanCosts } from '../plan/planWish.ts';

/** How the parts lie on one sheet, as a picture to tap on. */
export interface NestSketch {
  readonly widthMm: number;
  readonly heightMm: number;
  /** One closed outline a part, `x y x y …` in mm, y downwards. */
  readonly parts: readonly (readonly number[])[];
  /** In which order parts are taken for a setting of their own: the first lie far from one another. */
  readonly apart?: readonly number[];
}

/** An order that is cut sheet by sheet, as the workshop keeps it. What was cut of it are counts that name it. */
export interface StartedOrder {
  readonly id: string;
  /** ISO 8601, UTC. */
  readonly startedAt: string;
  /** What the workshop calls the job. */
  readonly name?: string;
  /** Good parts wanted. */
  readonly parts: number;
  readonly partsPerSheet: number;
  /** Length of cut of one part. */
  readonly partLengthMm: number;
  readonly wish: OrderAim;
  /** For the cheapest: no more sound parts of 100 than these should fail to come out. */
  readonly acceptNotOutOf100: number;
  readonly costS: PlanCosts;
  /** The power that it is cut at; absent: what the sheet is asked about. */
  readonly powerPct?: number;
  readonly nest?: NestSketch;
  /** It was ended before all parts were there. ISO 8601, UTC. */
  readonly endedAt?: string;
}
