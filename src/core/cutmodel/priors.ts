/**
 * Every prior of the through-cut model, in one place. Speeds in ln(mm/s), lengths in metres.
 * Source of all figures: judgement from common practice, no source, except where a line says otherwise.
 */
export const priors = {
  /** ln v50 at the asked power about {@link priorMedianV50MmPerS}. */
  lnV50Sd: 0.6,
  /** How fast the changeover rises with ln(power). */
  powerExponent: { mean: 1, sd: 0.3 },
  /** How fast it falls with ln(thickness); McMillin & Harry (1971) give 1.38 between 6.35 and 25.4 mm of pine. */
  thicknessExponent: { mean: 1.2, sd: 0.3, least: 0.6, most: 2.2 },
  /** How fast it rises with ln(passes). */
  passesExponent: { mean: 0.8, sd: 0.15 },
  /**
   * How fast it falls with ln(power at full speed / power in corners): 0 where the corners are never the weak places, the
   * power exponent where the whole path is like a corner.
   */
  cornersExponent: { mean: 0.35, sd: 0.2 },
  /** One effect for each air level against the study's commonest. */
  airSd: 0.15,
  /** Scatter of shapes about the changeover. */
  lnSigma: { mean: Math.log(0.08), sd: 0.5 },
  /** Width of the hanging band. */
  lnHangBand: { mean: Math.log(0.06), sd: 0.7 },
  /** Half-normal scale of sheet-to-sheet scatter. */
  sheetSdScale: 0.04,
  /** Half-normal scale of batch-to-batch scatter. */
  batchSdScale: 0.1,
  /** Exponential: one flaw in 30 reference shapes of 60 mm. */
  flawsPerMetreMean: 1 / 30 / 0.06,
  /** A grade is misread as each other grade with half this probability. */
  misreading: 0.01,
  /** A part of an order is in the hand for longer, and one that hangs meets the knife: it is seldom counted wrongly. */
  miscounting: 0.001,
  /** One flaw in five is not seen for what it is by someone who counts parts and has a place for flaws. */
  flawsOverlooked: 0.2,
  /** Weights of the links. */
  links: { normal: 0.5, logistic: 0.2, student3: 0.3 },
  /** A habit is a prior on ln v50 at its power. */
  habit: { sd: 0.15, shift: { always: 0.2, nearly: 0.12, 'often-not': 0 } },
} as const;

/** Median v50 of each class at 3 mm and a delivered fraction of 0.30, in mm/s. Common practice, no source. */
const medianAtReference: Readonly<Record<string, number>> = {
  plywood: 17,
  mdf: 14,
  hardboard: 13,
  softwood: 19,
  hardwood: 14,
  veneer: 17,
  bamboo: 13,
  acrylic: 12,
  cardboard: 40,
  card: 45,
  paper: 60,
  leather: 22,
  cork: 30,
  felt: 35,
  fabric: 60,
  rubber: 10,
};
const medianOfTheUnknown = 16;

/**
 * Prior median of the speed at which half the reference shapes fall out:
 * v50 = k(class) · (P/0.30) · (h/3 mm)^−1.2, P the delivered fraction, h in mm. Never below 0.2 mm/s.
 * Within a factor 1.8 two times in three (`lnV50Sd`).
 */
export const priorMedianV50MmPerS = (
  material: string,
  thicknessMm: number,
  deliveredFraction: number,
): number => {
  const words = material.toLowerCase();
  const named = Object.entries(medianAtReference).find(([name]) => words.includes(name));
  const atReference =
    named?.[1] ??
    (/\bply\b/.test(words) ? (medianAtReference['plywood'] ?? 0) : medianOfTheUnknown);
  const power = Math.max(0.01, deliveredFraction) / 0.3;
  return Math.max(0.2, atReference * power * (thicknessMm / 3) ** -priors.thicknessExponent.mean);
};
