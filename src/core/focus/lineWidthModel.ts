/**
 * The width of a line burnt across a beam's focus. At a height `away` from it the beam's radius is w = w0·√(1 + u²),
 * u = away / zR; the dose at the middle of a drawn line goes with 1/w; and the line is as wide as the dose exceeds the
 * threshold of the stuff: W² = 2w²·ln(F/Fth) (Liu 1982, Optics Letters 7). Written by the width at the focus:
 *
 *     W² = W0²·(1 + u²)·(1 − q·ln(1 + u²)),   q = 1 / (2·ln(F0/Fth))
 *
 * q = 0 is a dose far above the threshold: the line then opens like the beam itself, d² = d0² + Θ²·z².
 */
export interface LineWidthModel {
  /** Where the focus is, mm, on the scale of the readings. */
  readonly focusMm: number;
  /** From there to where the beam's area has doubled, mm. */
  readonly rayleighMm: number;
  /** Width of the line at the focus, mm. */
  readonly widthMm: number;
  /** How much the dose counts; 0 and above. */
  readonly q: number;
}

/** The line's width at a place; 0 where it has faded. */
export const lineWidthMm = (model: LineWidthModel, atMm: number): number => {
  const grown = 1 + ((atMm - model.focusMm) / model.rayleighMm) ** 2;
  return model.widthMm * Math.sqrt(Math.max(0, grown * (1 - model.q * Math.log(grown))));
};

/** How far from the focus the line fades, mm; Infinity where the dose never falls to the threshold. */
export const fadesAwayMm = ({ rayleighMm, q }: LineWidthModel): number =>
  q > 0 ? rayleighMm * Math.sqrt(Math.exp(1 / q) - 1) : Infinity;
