/** Along which of the machine's axes the strips of a comb are narrow. */
export const combDirections = ['across', 'up'] as const;
export type CombDirection = (typeof combDirections)[number];

/**
 * A block cut into strips side by side, outline included, and measured with its strips pushed together: each strip has lost
 * half a kerf on either side. Beside it, where there is one, a bar as wide as the comb was drawn, cut in one piece.
 */
export interface KerfComb {
  readonly place?: string;
  readonly direction: CombDirection;
  /** Two at least. */
  readonly strips: number;
  /** Width of the block as drawn, mm. */
  readonly nominalMm: number;
  /** Widths of all strips pushed together, each reading taken anew, mm. */
  readonly measuredMm: readonly number[];
  /** Widths of the bar, mm. */
  readonly barMm?: readonly number[];
}

/** What measures, and what stands between the strips. */
export interface CombMeasure {
  /** The caliper's step, mm. */
  readonly resolutionMm: number;
  /** How far the caliper may be off: its limit of error, mm. */
  readonly caliperLimitMm: number;
  /** How far the machine's scale may be off, as a share in per cent. */
  readonly scaleLimitPct: number;
  /** What is left at most between two strips pushed together, mm. */
  readonly gapMm: number;
}

/**
 * A digital caliper of a workshop (step 0.01 mm, limit of error 0.03 mm), a belt drive, and char between strips. Common
 * practice, no source.
 */
export const usualCombMeasure: CombMeasure = {
  resolutionMm: 0.01,
  caliperLimitMm: 0.03,
  scaleLimitPct: 0.1,
  gapMm: 0.01,
};

/** How many kerfs the difference holds that a comb is measured by. */
export const kerfsOf = ({ strips, barMm }: KerfComb): number =>
  barMm === undefined ? strips : strips - 1;
