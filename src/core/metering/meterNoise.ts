import { litSettings, type MeterSetting } from './meterSettings.ts';

/** How much a reading of the meter scatters, and how well that is known. */
export interface MeterNoise {
  /** Standard deviation of one reading at the mean current of the settings, mA. */
  readonly sdMa: number;
  /** That mean current, mA. */
  readonly atMa: number;
  /** Degrees of freedom behind it. */
  readonly degrees: number;
  /**
   * `repeats`: from readings at one and the same setting. `neighbours`: too few of those, so from how far settings lie
   * off the line through their neighbours, which counts a bend as noise too. `assumed`: nothing to tell it from.
   */
  readonly from: 'repeats' | 'neighbours' | 'assumed';
  /** The step of the scale to which the readings seem to have been read, mA. */
  readonly readToMa: number;
}

/** From this many degrees of freedom on, repeats are left to speak alone. */
const enoughDegrees = 3;
/** A quarter of a division of the usual panel meter, believed about as much as five readings. Common practice, no source. */
export const assumedNoise = { sdMa: 0.25, degrees: 4, from: 'assumed' } as const;
/** Pseudo-residuals overlap: for even steps they are worth this share of as many independent ones. */
const overlap = 1 / 1.944;

/**
 * The scatter of a reading, pooled over all settings where the tube fires: from the repeats; without enough of them from
 * pseudo-residuals (Gasser, Sroka & Jennen-Steinmetz 1986, Biometrika 73: from memory). A meter's own error of scale
 * moves all readings alike: no repeat shows it, and it is not in here.
 */
export const meterNoise = (settings: readonly MeterSetting[]): MeterNoise => {
  const lit = litSettings(settings);
  const scale = {
    atMa: lit.reduce((sum, { meanMa }) => sum + meanMa / lit.length, 0),
    readToMa: stepOfScale(lit.flatMap(({ readingsMa }) => readingsMa)),
  };
  const apart = lit.flatMap(({ readingsMa, meanMa }) =>
    readingsMa.map((reading) => (reading - meanMa) / growth(meanMa, scale.atMa)),
  );
  const repeats = apart.length - lit.length;
  const ownSquares = sumOfSquares(apart);
  if (repeats >= enoughDegrees)
    return { ...scale, sdMa: Math.sqrt(ownSquares / repeats), degrees: repeats, from: 'repeats' };
  const pseudo = pseudoResiduals(lit);
  if (pseudo.length < 2) return { ...scale, ...assumedNoise };
  const off = pseudo.map(
    ({ ma, meanMa, perReading }) => ma / (perReading * growth(meanMa, scale.atMa)),
  );
  const degrees = repeats + pseudo.length * overlap;
  return {
    ...scale,
    sdMa: Math.sqrt((ownSquares + sumOfSquares(off) * overlap) / degrees),
    degrees,
    from: 'neighbours',
  };
};

const sumOfSquares = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value * value, 0);

/**
 * How the scatter grows with the current: a third of its square is the eye and the needle, the same everywhere; the rest
 * is the flicker of the discharge, which goes with the current. Too few readings tell it; common practice, no source.
 */
const growth = (currentMa: number, atMa: number): number =>
  Math.sqrt((1 + 2 * (currentMa / atMa) ** 2) / 3);

/** How far a setting's mean lies off the straight line through its two neighbours. */
export interface PseudoResidual {
  readonly powerPct: number;
  readonly meanMa: number;
  /** Where the line passes, mA. */
  readonly expectedMa: number;
  /** Mean less line, mA. */
  readonly ma: number;
  /** Its standard deviation where one reading's is 1. */
  readonly perReading: number;
  /** How much the neighbours differ, mA. */
  readonly riseMa: number;
}

/** One for each lit setting between two others. */
export const pseudoResiduals = (lit: readonly MeterSetting[]): readonly PseudoResidual[] =>
  lit.flatMap((here, i) => {
    const [before, after] = [lit[i - 1], lit[i + 1]];
    if (before === undefined || after === undefined) return [];
    const share = (here.powerPct - before.powerPct) / (after.powerPct - before.powerPct);
    const expectedMa = before.meanMa + share * (after.meanMa - before.meanMa);
    const variance =
      (1 - share) ** 2 / before.readingsMa.length +
      share ** 2 / after.readingsMa.length +
      1 / here.readingsMa.length;
    return [
      {
        powerPct: here.powerPct,
        meanMa: here.meanMa,
        expectedMa,
        ma: here.meanMa - expectedMa,
        perReading: Math.sqrt(variance),
        riseMa: Math.abs(after.meanMa - before.meanMa),
      },
    ];
  });

/** Steps to which scales are read, coarsest first, mA. */
const steps = [1, 0.5, 0.25, 0.2, 0.1, 0.05, 0.02, 0.01] as const;

const stepOfScale = (readings: readonly number[]): number =>
  steps.find((step) =>
    readings.every((reading) => Math.abs(reading / step - Math.round(reading / step)) < 1e-6),
  ) ?? 0;

/** Standard deviation of one reading at a current, mA. */
export const sdAt = ({ sdMa, atMa }: MeterNoise, currentMa: number): number =>
  sdMa * growth(currentMa, atMa);

/**
 * Standard deviation of the mean of the readings at one setting, mA. Where the scatter hides below the step of the
 * scale, repeats fall on the same figure and teach nothing: then the rounding itself stands in, step/√12.
 */
export const sdOfMean = (
  noise: MeterNoise,
  { meanMa, readingsMa }: Pick<MeterSetting, 'meanMa' | 'readingsMa'>,
): number =>
  Math.max(sdAt(noise, meanMa) / Math.sqrt(readingsMa.length), noise.readToMa / Math.sqrt(12));
