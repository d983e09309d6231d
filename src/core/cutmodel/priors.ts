/**
 * Every prior of the through-cut model, in one place. Speeds in ln(mm/s), lengths in metres.
 * Source of all figures: judgement from common practice, no source, except where a line says otherwise.
 */
export const priors = {
  /** ln v50 at the asked power about {@link priorMedianV50MmPerS}. */
  lnV50Sd: 0.6,
  /**
   * The same where it was said what the tube is sold as: machines of one strength differ by optics, focus, air and wood.
   * From memory, common practice.
   */
  lnV50SdOfKnownTube: 0.42,
  /** And for a card that is designed while nobody has said it: tubes from 40 to 130 W are common. */
  lnV50SdOfAnyTube: 0.75,
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
  /**
   * A slow setting that has cut lies so far below the changeover in ln speed, give or take `sd`: from hardly slower to three
   * times, and the next sheet is not quite that one. It says less of another material. From memory, common practice.
   */
  slowCut: { shift: 0.45, sd: 0.4, otherMaterialSd: 0.3 },
} as const;

/** Median v50 of each class at 3 mm and a delivered fraction of 0.30, in mm/s. Common practice, no source. */
const medianAtReference = {
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
} as const;
const medianOfTheUnknown = 16;

/** The first kind with a prior of its own that a material's name holds. */
export const kindNamedIn = (material: string): keyof typeof medianAtReference | undefined => {
  const words = material.toLowerCase();
  const kinds = Object.keys(medianAtReference) as (keyof typeof medianAtReference)[];
  const named = kinds.find((kind) => words.includes(kind));
  return named ?? (/\bply\b/.test(words) ? 'plywood' : undefined);
};

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
  const kind = kindNamedIn(material);
  const atReference = kind === undefined ? medianOfTheUnknown : medianAtReference[kind];
  const power = Math.max(0.01, deliveredFraction) / 0.3;
  return Math.max(0.2, atReference * power * (thicknessMm / 3) ** -priors.thicknessExponent.mean);
};

/**
 * The tube whose machine the medians describe, W as sold: 3 mm of plywood at 0.30 of it, 45 W at the work, then changes over at
 * 17 mm/s, 0.38 mm/s a watt. Checked against southern pine at 240 W (McMillin & Harry 1971: 41.95 mm/s at 6.35 mm, 6.18 mm/s
 * at 25.4 mm; the formula gives 41 and 7.8), and against 40 W tubes, which cut 3 mm plywood at 30 % at 3 to 5 mm/s (from
 * memory, common practice).
 */
const tubeOfMedians = 150;
/**
 * A tube that nobody named, for a card: a little below the middle of 40 to 130 W (72 W in ln), since its slow side ends at the
 * ceiling of line energy and its fast side is free, W.
 */
const anyTube = 66;

/** A slow setting that has cut, for whoever does not know the watts; `deliveredFraction` is that of its power. */
export interface SlowCutDelivered {
  readonly material: string;
  readonly thicknessMm: number;
  readonly speedMmPerS: number;
  readonly deliveredFraction: number;
}

export interface SheetOnTube {
  readonly material: string;
  readonly thicknessMm: number;
  readonly deliveredFraction: number;
  /** What the tube is sold as, W. */
  readonly nominalW?: number;
  /** Without meaning where the watts are known. */
  readonly slowCut?: SlowCutDelivered;
}

export interface ExpectedV50 {
  readonly v50MmPerS: number;
  readonly lnSd: number;
}

/**
 * The changeover that is expected before anything was cut, by the watts that arrive:
 * v50 = k(class) · (W/45) · (h/3 mm)^−1.2, W the delivered fraction of what the tube is sold as; or by a slow setting that has
 * cut. Where nobody said either, as {@link priorMedianV50MmPerS} has it.
 */
export const expectedV50 = ({ nominalW, slowCut, ...sheet }: SheetOnTube): ExpectedV50 => {
  const median = medianOf(sheet);
  if (nominalW !== undefined)
    return { v50MmPerS: median * (nominalW / tubeOfMedians), lnSd: priors.lnV50SdOfKnownTube };
  return slowCut === undefined
    ? { v50MmPerS: median, lnSd: priors.lnV50Sd }
    : bySlowCut(sheet, slowCut);
};

/** The same for a first card, which must reach the changeover of a weak tube and of a strong one where nobody said which. */
export const expectedForCard = (sheet: SheetOnTube): ExpectedV50 =>
  sheet.nominalW === undefined && sheet.slowCut === undefined
    ? ofAnyTube(sheet)
    : expectedV50(sheet);

type SheetAlone = Pick<SheetOnTube, 'material' | 'thicknessMm' | 'deliveredFraction'>;

const medianOf = ({ material, thicknessMm, deliveredFraction }: SheetAlone): number =>
  priorMedianV50MmPerS(material, thicknessMm, deliveredFraction);

const ofAnyTube = (sheet: SheetAlone): ExpectedV50 => ({
  v50MmPerS: medianOf(sheet) * (anyTube / tubeOfMedians),
  lnSd: priors.lnV50SdOfAnyTube,
});

/** Beyond 16 to 310 W a machine is not thought possible, whatever setting is said to have cut. */
const farthestTubes = 1.5;

const bySlowCut = (sheet: SheetAlone, slow: SlowCutDelivered): ExpectedV50 => {
  const { shift, sd, otherMaterialSd } = priors.slowCut;
  const said = Math.log(slow.speedMmPerS / ofAnyTube(slow).v50MmPerS) + shift;
  const apart = Math.max(-farthestTubes, Math.min(farthestTubes, said));
  return {
    v50MmPerS: ofAnyTube(sheet).v50MmPerS * Math.exp(apart),
    lnSd: Math.hypot(sd, slow.material === sheet.material ? 0 : otherMaterialSd),
  };
};
