import { z } from 'zod';

import {
  depthOfFocusMm,
  fitCausticDiameters,
  fitCausticParabola,
  focusedWaist,
  type Caustic,
} from '../../core/focus/caustic.ts';
import { numbers } from './binaryRows.ts';
import { byKind } from './byKind.ts';

const shown = (caustic: Caustic): object => ({
  d0: caustic.waistDiameterMm,
  z0: caustic.waistAtMm,
  divergenceFullAngle: caustic.divergenceRad,
  rayleighLength: caustic.rayleighLengthMm,
  M2: caustic.beamQuality,
});

const caustic = z
  .object({ wavelength: z.number().positive(), z: numbers, d: z.array(z.number().positive()) })
  .transform((input) => {
    const wavelengthMm = input.wavelength;
    const widths = input.z.map((atMm, i) => ({ atMm, diameterMm: input.d[i] ?? NaN }));
    const plain = fitCausticParabola(widths, { wavelengthMm });
    if (!plain.ok) return { refuse: true, why: plain.problem.code };
    const weighted = fitCausticParabola(widths, { wavelengthMm, relative: true });
    const diameters = fitCausticDiameters(widths, { wavelengthMm });
    const relative = fitCausticDiameters(widths, { wavelengthMm, relative: true });
    return {
      squaredDiameterUnweighted: { ...shown(plain.value), ABC: plain.value.coefficients },
      ...(weighted.ok && {
        squaredDiameterWeightsInverseD2squared: {
          ...shown(weighted.value),
          ABC: weighted.value.coefficients,
        },
      }),
      ...(diameters.ok && {
        diameterNonlinear: {
          ...shown(diameters.value),
          rss: diameters.value.rss,
          se: diameters.value.standardErrors,
        },
      }),
      ...(relative.ok && {
        diameterNonlinearRelative: { ...shown(relative.value), rss: relative.value.rss },
        exact: shown(relative.value),
      }),
    };
  });

const spot = z
  .object({
    wavelength: z.number().positive(),
    focalLength: z.number().positive(),
    beamDiameter: z.number().positive(),
    M2: z.number().positive(),
  })
  .transform(({ wavelength, focalLength, beamDiameter, M2 }) => {
    const { waistDiameterMm, rayleighLengthMm } = focusedWaist({
      wavelengthMm: wavelength,
      focalLengthMm: focalLength,
      beamDiameterMm: beamDiameter,
      beamQuality: M2,
    });
    return {
      d0: waistDiameterMm,
      rayleighLength: rayleighLengthMm,
      depthAtSqrt2: depthOfFocusMm(rayleighLengthMm, Math.SQRT2),
      depthAt5Percent: depthOfFocusMm(rayleighLengthMm, 1.05),
    };
  });

/** Beam caustics, spot sizes and depths of focus. */
export const t10 = byKind({ caustic, spot });
