import { focusedWaist } from '../../src/core/focus/caustic.ts';
import type { LineWidthModel } from '../../src/core/focus/lineWidthModel.ts';
import type { SeededRandom } from '../../src/num/seededRandom.ts';

/** A beam below a nozzle: where it is narrowest, and how it opens. Invented, within what small machines have. */
export interface Beam {
  /** The gap between nozzle and focus, mm. */
  readonly gapMm: number;
  readonly waistRadiusMm: number;
  readonly rayleighMm: number;
}

const focalLengthsMm = [38.1, 50.8, 63.5] as const;

/** A lens of 38 to 64 mm, a beam of 6 to 8 mm at it, M² of 1 to 1.4; 10.6 µm. */
export const someBeam = (random: SeededRandom): Beam => {
  const { waistDiameterMm, rayleighLengthMm } = focusedWaist({
    wavelengthMm: 0.0106,
    focalLengthMm: focalLengthsMm[random.integer(focalLengthsMm.length)] ?? 50.8,
    beamDiameterMm: 6 + 2 * random.uniform(),
    beamQuality: 1 + 0.4 * random.uniform(),
  });
  return {
    gapMm: 6 + 3 * random.uniform(),
    waistRadiusMm: waistDiameterMm / 2,
    rayleighMm: rayleighLengthMm,
  };
};

/** How a line of a dose, so many times the threshold of the stuff, looks along the beam; Infinity: it opens like the beam. */
export const lineOf = (
  { waistRadiusMm, rayleighMm }: Beam,
  focusMm: number,
  dose: number,
): LineWidthModel => {
  const logDose = Math.log(dose);
  return Number.isFinite(dose)
    ? { focusMm, rayleighMm, widthMm: waistRadiusMm * Math.sqrt(2 * logDose), q: 0.5 / logDose }
    : { focusMm, rayleighMm, widthMm: 2 * waistRadiusMm, q: 0 };
};
