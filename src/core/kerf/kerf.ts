import type { Problem } from '../problem.ts';
import type { CombDirection } from './kerfComb.ts';

/** What may leave a kerf open. */
export const kerfDoubts = ['readings', 'step', 'caliper', 'scale', 'gaps'] as const;

/** One line of the budget: what leaves the kerf open, and by how much. */
export interface KerfDoubt {
  readonly from: (typeof kerfDoubts)[number];
  /** Standard uncertainty of the kerf by it alone, mm. */
  readonly uMm: number;
  readonly degrees: number;
}

/** A width removed, with how well it is known (JCGM 100:2008; its distribution by JCGM 101:2008). */
export interface Kerf {
  readonly kerfMm: number;
  /** Combined standard uncertainty, mm. */
  readonly standardMm: number;
  /** Effective degrees of freedom by Welch and Satterthwaite. */
  readonly degrees: number;
  /** Half the width of the interval that holds the kerf 95 times in 100, mm. */
  readonly expandedMm: number;
  /** That over the standard uncertainty: near 2, more where few readings stand behind it, less where only limits do. */
  readonly coverageFactor: number;
  readonly doubts: readonly KerfDoubt[];
}

export interface KerfEstimate extends Kerf {
  /** By direction, where combs were cut in both. */
  readonly byDirection: readonly (Kerf & { readonly direction: CombDirection })[];
  /** By comb, in the order given. */
  readonly byCombMm: readonly number[];
  readonly remarks: readonly Problem[];
}
