import { describe, expect, it } from 'vitest';

import { focusedWaist } from './caustic.ts';
import { fadesAwayMm, lineWidthMm } from './lineWidthModel.ts';

/**
 * A lens of 50.8 mm and a beam of 6 mm, M² = 1, 10.6 µm: a spot of 0.1143 mm by d0 = 4λf/(πD) (ISO 11146-1's formula for
 * the focused diameter). The line of 6 times the threshold at the focus, by W² = 2w²·ln(F/Fth) with F ∝ 1/w (Liu 1982).
 */
const { waistDiameterMm, rayleighLengthMm } = focusedWaist({
  wavelengthMm: 0.0106,
  focalLengthMm: 50.8,
  beamDiameterMm: 6,
  beamQuality: 1,
});
const waistMm = waistDiameterMm / 2;

describe('the width of a burnt line', () => {
  const dose = 6;
  const model = {
    focusMm: 4,
    rayleighMm: rayleighLengthMm,
    widthMm: waistMm * Math.sqrt(2 * Math.log(dose)),
    q: 0.5 / Math.log(dose),
  };

  it('is that of Liu’s rule with the beam’s own radius and dose at each height', () => {
    expect(waistDiameterMm).toBeCloseTo(0.1143, 4);
    for (const away of [0, 0.4, 1, 2.5, 4]) {
      const w = waistMm * Math.hypot(1, away / rayleighLengthMm);
      const doseThere = (dose * waistMm) / w;
      const expected = Math.sqrt(2 * w * w * Math.log(doseThere));
      expect(lineWidthMm(model, 4 + away)).toBeCloseTo(expected, 12);
      expect(lineWidthMm(model, 4 - away)).toBeCloseTo(expected, 12);
    }
  });

  it('is nothing where the dose has fallen to the threshold, to both sides alike', () => {
    const away = fadesAwayMm(model);
    expect(waistMm * Math.hypot(1, away / rayleighLengthMm)).toBeCloseTo(dose * waistMm, 10);
    expect(lineWidthMm(model, 4 + away)).toBeCloseTo(0, 6);
    expect(lineWidthMm(model, 4 - 1.1 * away)).toBe(0);
  });

  it('opens like the beam where the dose is far above the threshold: d² = d0² + Θ²z²', () => {
    const open = { ...model, q: 0 };
    expect(lineWidthMm(open, 4 + rayleighLengthMm)).toBeCloseTo(Math.SQRT2 * open.widthMm, 12);
    expect(fadesAwayMm(open)).toBe(Infinity);
  });
});
