import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import {
  depthOfFocusMm,
  fitCausticDiameters,
  fitCausticParabola,
  focusedWaist,
  type BeamWidth,
} from './caustic.ts';

const wavelengthMm = 0.0106;

/** Widths of a beam that is known. */
const beam = (waistMm: number, atMm: number, beamQuality: number): readonly BeamWidth[] => {
  const opening = (4 * beamQuality * wavelengthMm) / (Math.PI * waistMm);
  return [-6, -3, -1, 0.5, 2, 5].map((from) => ({
    atMm: atMm + from,
    diameterMm: Math.hypot(waistMm, opening * from),
  }));
};

describe('a beam’s waist', () => {
  it('comes back from widths that were made of it, by every fit', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.08, max: 0.4, noNaN: true }),
        fc.double({ min: -20, max: 120, noNaN: true }),
        fc.double({ min: 1, max: 3, noNaN: true }),
        fc.boolean(),
        (waistMm, atMm, beamQuality, relative) => {
          for (const fit of [fitCausticParabola, fitCausticDiameters]) {
            const found = fit(beam(waistMm, atMm, beamQuality), { wavelengthMm, relative });
            expect(found.ok).toBe(true);
            if (!found.ok) return;
            expect(found.value.waistDiameterMm / waistMm).toBeCloseTo(1, 6);
            expect(found.value.waistAtMm).toBeCloseTo(atMm, 6);
            expect(found.value.beamQuality / beamQuality).toBeCloseTo(1, 6);
          }
        },
      ),
    );
  });

  it('is where the lens puts it: 0.114 mm behind 50.8 mm for a beam of 6 mm', () => {
    // d0 = 4·λ·f/(π·D) by hand.
    const { waistDiameterMm, rayleighLengthMm } = focusedWaist({
      wavelengthMm,
      focalLengthMm: 50.8,
      beamDiameterMm: 6,
      beamQuality: 1,
    });
    expect(waistDiameterMm).toBeCloseTo((4 * 0.0106 * 50.8) / (Math.PI * 6), 12);
    expect(depthOfFocusMm(rayleighLengthMm, Math.SQRT2)).toBeCloseTo(2 * rayleighLengthMm, 12);
  });

  it('is refused where too little or no waist was measured', () => {
    const codeOf = (widths: readonly BeamWidth[]): string => {
      const found = fitCausticDiameters(widths, { wavelengthMm });
      return found.ok ? 'found' : found.problem.code;
    };
    const two = beam(0.2, 0, 1).slice(0, 2);
    expect(codeOf([...two, ...two])).toBe('caustic-too-few-positions');
    expect(codeOf([0.1, 0.25, 0.32, 0.36].map((diameterMm, atMm) => ({ atMm, diameterMm })))).toBe(
      'caustic-no-waist',
    );
  });

  it('has no standard errors from three widths, and has them from more', () => {
    const widths = beam(0.2, 10, 1.2);
    const three = fitCausticDiameters(widths.slice(1, 4), { wavelengthMm });
    const all = fitCausticDiameters(widths, { wavelengthMm });
    expect(three.ok && three.value.standardErrors).toBeNull();
    expect(all.ok && all.value.standardErrors).toHaveLength(3);
  });
});
