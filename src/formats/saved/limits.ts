/**
 * Bounds of what is worth storing. Wide enough for any laser that cuts sheet, narrow enough that a slip of a unit or a
 * stuck key is refused at the border. Common practice, no source.
 */
export const bounds = {
  speedMmPerS: [0.05, 5000],
  thicknessMm: [0.01, 200],
  lengthMm: [0.1, 100_000],
  currentMa: [0, 500],
  ratedCurrentMa: [0.1, 500],
  accelerationMmPerS2: [1, 1_000_000],
  /** A jump of one axis at a corner, and the speed where a power ramp starts. */
  jumpMmPerS: [0, 5000],
  deviationMm: [0, 50],
  /** CIE L*. */
  lightness: [0, 100],
  /** Of strip, block and nozzle on a focus ramp. */
  rampMm: [0, 2000],
  bedGapMm: [0, 1000],
  nominalW: [5, 1000],
  airKPa: [0, 2000],
  waterC: [0, 90],
  passes: [1, 50],
  holdUpS: [0, 100_000],
  /** Parts of a hundred that one may be ready to lose. */
  notOutOf100: [0.1, 50],
  lineWidthMm: [0.01, 50],
  /** From one line of a filling to the next. */
  lineSpacingMm: [0.01, 5],
  /** Money, or hours. */
  figure: [0, 1e9],
  lifeExponent: [0, 10],
  count: [0, 10_000_000],
} as const;

/** Characters of a name or label. */
export const labelChars = 120;

/** Characters of a note. */
export const noteChars = 4000;

/** What one card holds. */
export const mostOnCard = { rungs: 200, cells: 1000 } as const;
