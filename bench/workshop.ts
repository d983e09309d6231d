import type { PartEnd } from '../src/core/virtual/virtualWorkshop.ts';
import type { Grade } from '../src/core/reading/grade.ts';

/** One virtual workshop, as `contracts.md` of the bench has it: the tool sees only part of it. */
export interface OpenedWorkshop {
  readonly machine: {
    readonly maxPowerPct: number;
    readonly speedRangeMmPerS: readonly [number, number];
    readonly tubePoints?: readonly { readonly powerPct: number; readonly currentMa: number }[];
    readonly ratedCurrentMa?: number;
  };
  readonly stock: {
    readonly material: string;
    readonly nominalThicknessMm: number;
    readonly measuredThicknessMm: readonly number[];
  };
  readonly bed: { readonly widthMm: number; readonly heightMm: number };
  /** Each call is a new sheet. Cells with a length are parts of an order, and may end spoilt. */
  readonly cutCard: (cells: readonly BenchCell[]) => readonly PartEnd[];
  readonly trueOutShare: (setting: BenchSetting, lengthMm?: number) => number;
  /** Of those that come out or hang; absent: none hangs. */
  readonly trueThroughShare?: (setting: BenchSetting, lengthMm?: number) => number;
  readonly fastestKeeping: (share: number, powerPct: number, lengthMm?: number) => number;
  readonly typicalPowerPct: number;
  /** Only our own workshops tell it, for tables by thirds of the true scatter. */
  readonly sigmaForTheReferee?: number;
  /** Only our own workshops tell it, for the bound that no method can pass. */
  readonly truthForTheBound?: TruthForTheBound;
}

/** All that scatters, and not where the changeover is. */
export interface TruthForTheBound {
  readonly link: 'normal' | 'logistic' | 'student3';
  readonly sigma: number;
  readonly hangBand: number;
  readonly sheetSd: number;
  readonly flawShare: number;
  readonly misreadShare: number;
}

export interface BenchSetting {
  readonly powerPct: number;
  readonly speedMmPerS: number;
  readonly passes: number;
  readonly air: boolean;
}

export interface BenchCell extends BenchSetting {
  readonly xMm: number;
  readonly yMm: number;
  /** A part of an order; absent: a card's shape. */
  readonly lengthMm?: number;
}

export interface WorkshopModule {
  readonly name: string;
  readonly openWorkshop: (seed: number) => OpenedWorkshop;
  readonly history?: (seed: number) => unknown;
  /** Every card is cut from the same board, and the speed is for that board; its owner knows. Absent: false. */
  readonly oneBoard?: boolean;
  /** Share of reference lengths that meet a flaw; what the one who knows pays for too. */
  readonly flawRate?: number;
}

/** What a method may look at, and the one thing it may do. */
export type VisibleWorkshop = Pick<
  OpenedWorkshop,
  'machine' | 'stock' | 'bed' | 'typicalPowerPct'
> & {
  readonly history?: unknown;
  readonly oneBoard?: boolean;
  /** For the bound alone. */
  readonly truth?: TruthForTheBound;
  readonly cutCard: (cells: readonly BenchCell[]) => readonly Grade[];
};

/** Cuts a card of shapes, none of which has a length of its own, so that none ends spoilt. */
export const cutShapes = (shop: OpenedWorkshop, cells: readonly BenchCell[]): readonly Grade[] =>
  shop.cutCard(cells).map((end) => (end === 'spoilt' ? 'stays' : end));
