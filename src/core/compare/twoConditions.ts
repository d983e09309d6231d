import type { CutStudy, StudyCell } from '../cutmodel/cutStudy.ts';
import type { Machine } from '../machine/machine.ts';

/** What is meant to differ between the two conditions. */
export const differences = ['air', 'lens', 'mirrors', 'batch', 'machine', 'other'] as const;
export type Difference = (typeof differences)[number];

/**
 * Two conditions and what fell out under each. Cells of one batch and one sheet name lie on one sheet, whichever side they
 * are of; so where batches are compared, no sheet is common.
 */
export interface TwoConditions {
  readonly differs: Difference;
  readonly machine: Machine;
  /** The other side's, where it is another one. */
  readonly otherMachine?: Machine;
  readonly stock: CutStudy['stock'];
  readonly one: readonly StudyCell[];
  readonly other: readonly StudyCell[];
  /** A difference in speed of less than this is not worth having, in per cent. */
  readonly worthPct: number;
  /** The difference in speed that a further card is to tell from nothing, in per cent. */
  readonly tellPct: number;
}

export const usualWorthPct = 2;
export const usualTellPct = 5;

/** Cells that say how they ended, spoilt ones left out. */
export const gradedIn = (cells: readonly StudyCell[]): readonly StudyCell[] =>
  cells.filter((cell) => cell.grade !== undefined && cell.spoilt === undefined);

/** A text that is equal for cells of one sheet. Batches never share one. */
export const sheetOf = ({ batch = '', sheet = '' }: StudyCell): string => `${batch}\u0000${sheet}`;
