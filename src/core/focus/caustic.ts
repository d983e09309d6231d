import { leastSquares, type Residuals } from '../../num/leastSquares.ts';
import { invertPositive, times, weightedCross, weightedSum } from '../../num/symmetricMatrix.ts';
import { done, refused, type Outcome } from '../problem.ts';

/** The diameter of the beam (D4σ, full width) at one place along it. */
export interface BeamWidth {
  readonly atMm: number;
  readonly diameterMm: number;
}

/** A beam’s waist and how it opens: d² = d0² + Θ²·(z − z0)². */
export interface Caustic {
  readonly waistDiameterMm: number;
  readonly waistAtMm: number;
  /** Full angle, rad. */
  readonly divergenceRad: number;
  /** From the waist to where the area has doubled. */
  readonly rayleighLengthMm: number;
  /** M²: how many times wider the waist is than the light allows. */
  readonly beamQuality: number;
}

/** A parabola d² = a + b·z + c·z² and the waist in it. */
export interface ParabolaCaustic extends Caustic {
  readonly coefficients: readonly [a: number, b: number, c: number];
}

/** A fit of the diameters themselves, with the standard errors of waist diameter, waist place and beam quality. */
export interface DiameterCaustic extends Caustic {
  readonly rss: number;
  /** Null for three widths, which leave nothing to judge by. */
  readonly standardErrors: readonly [diameterMm: number, atMm: number, beamQuality: number] | null;
}

interface Fit {
  readonly wavelengthMm: number;
  /** Weights every width by its own size, as where the error is a part of the width. The standard leaves it open. */
  readonly relative?: boolean;
}

/**
 * The waist from widths at three places or more, by least squares on the squared diameters: the form of ISO 11146-1.
 * (Widths of lines burnt in a workshop are not those of the standard; with them this finds the focus and no more.)
 */
export const fitCausticParabola = (
  widths: readonly BeamWidth[],
  { wavelengthMm, relative = false }: Fit,
): Outcome<ParabolaCaustic> => {
  const positions = new Set(widths.map(({ atMm }) => atMm)).size;
  if (positions < 3) return refused('caustic-too-few-positions', { positions });
  const middle = widths.reduce((sum, { atMm }) => sum + atMm / widths.length, 0);
  const rows = widths.map(({ atMm }) => [1, atMm - middle, (atMm - middle) ** 2]);
  const weights = widths.map(({ diameterMm }) => (relative ? diameterMm ** -4 : 1));
  const targets = widths.map(({ diameterMm }, i) => (weights[i] ?? NaN) * diameterMm ** 2);
  const inverse = invertPositive(weightedCross(rows, weights))?.inverse;
  if (inverse === undefined) return refused('caustic-too-few-positions', { positions });
  const [a = NaN, b = NaN, c = NaN] = times(inverse, weightedSum(rows, targets));
  const waistSquared = a - (b * b) / (4 * c);
  if (!(c > 0 && waistSquared > 0)) return refused('caustic-no-waist');
  const waistDiameterMm = Math.sqrt(waistSquared);
  return done({
    ...causticOf(
      { waistDiameterMm, waistAtMm: middle - b / (2 * c), divergenceRad: Math.sqrt(c) },
      wavelengthMm,
    ),
    coefficients: [a - b * middle + c * middle * middle, b - 2 * c * middle, c],
  });
};

/** The waist by least squares on the diameters themselves, begun at the parabola’s. */
export const fitCausticDiameters = (
  widths: readonly BeamWidth[],
  fit: Fit,
): Outcome<DiameterCaustic> => {
  const parabola = fitCausticParabola(widths, { ...fit, relative: true });
  if (!parabola.ok) return parabola;
  const { waistDiameterMm: d0, waistAtMm: z0, beamQuality: m2 } = parabola.value;
  const solved = leastSquares(
    (parameters) => diameterResiduals(widths, fit, parameters),
    [d0, z0, m2],
  );
  if (!solved.ok) return refused('caustic-no-waist');
  const [waistDiameterMm = NaN, waistAtMm = NaN, beamQuality = NaN] = solved.parameters;
  const divergenceRad = (4 * beamQuality * fit.wavelengthMm) / (Math.PI * waistDiameterMm);
  const spare = widths.length - 3;
  const errors = solved.unscaledCovariance.map((row, i) =>
    Math.sqrt(((row[i] ?? NaN) * solved.rss) / spare),
  );
  const [first = NaN, second = NaN, third = NaN] = errors;
  return done({
    ...causticOf({ waistDiameterMm, waistAtMm, divergenceRad }, fit.wavelengthMm),
    rss: solved.rss,
    standardErrors: spare > 0 ? [first, second, third] : null,
  });
};

const diameterResiduals = (
  widths: readonly BeamWidth[],
  { wavelengthMm, relative = false }: Fit,
  [d0 = NaN, z0 = NaN, m2 = NaN]: readonly number[],
): Residuals => {
  const opening = ((4 * m2 * wavelengthMm) / (Math.PI * d0)) ** 2;
  const lines = widths.map(({ atMm, diameterMm }) => {
    const from = atMm - z0;
    const spread = opening * from * from;
    const diameter = Math.sqrt(d0 * d0 + spread);
    const weight = relative ? 1 / diameterMm : 1;
    return {
      value: weight * (diameter - diameterMm),
      slopes: [d0 - spread / d0, -opening * from, spread / m2].map(
        (slope) => (weight * slope) / diameter,
      ),
    };
  });
  return { values: lines.map((line) => line.value), slopes: lines.map((line) => line.slopes) };
};

const causticOf = (
  waist: Pick<Caustic, 'waistDiameterMm' | 'waistAtMm' | 'divergenceRad'>,
  wavelengthMm: number,
): Caustic => ({
  ...waist,
  rayleighLengthMm: waist.waistDiameterMm / waist.divergenceRad,
  beamQuality: (Math.PI * waist.waistDiameterMm * waist.divergenceRad) / (4 * wavelengthMm),
});

/** The waist that a lens makes of a beam that fills `beamDiameterMm` at it: d0 = 4·λ·f·M²/(π·D). */
export const focusedWaist = (given: {
  readonly wavelengthMm: number;
  readonly focalLengthMm: number;
  readonly beamDiameterMm: number;
  readonly beamQuality: number;
}): Pick<Caustic, 'waistDiameterMm' | 'rayleighLengthMm'> => {
  const { wavelengthMm, focalLengthMm, beamDiameterMm, beamQuality } = given;
  const divergence = beamDiameterMm / focalLengthMm;
  const waistDiameterMm = (4 * wavelengthMm * beamQuality) / (Math.PI * divergence);
  return { waistDiameterMm, rayleighLengthMm: waistDiameterMm / divergence };
};

/** Over what length the beam stays narrower than `widening` times its waist (more than 1). */
export const depthOfFocusMm = (rayleighLengthMm: number, widening: number): number =>
  2 * rayleighLengthMm * Math.sqrt(widening * widening - 1);
