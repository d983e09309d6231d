import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { checkGauge, focusAdvice, servedThicknessMm, type FocusAdvice } from './focusAdvice.ts';

const advice = (thicknessMm: number, rayleighMm = 1.2, gapMm = 7): FocusAdvice => {
  const said = focusAdvice({ gapMm, rayleighMm, thicknessMm });
  if (!said.ok) throw new Error(said.problem.code);
  return said.value;
};

describe('at the surface or into the sheet', () => {
  it('is the surface for a sheet within the depth of focus, else half-way in (geometry of d² = d0² + Θ²z²)', () => {
    expect(advice(1)).toMatchObject({ place: 'surface', intoMm: 0, gapMm: 7 });
    expect(advice(2)).toMatchObject({ place: 'into', intoMm: 1, gapMm: 6 });
    expect(advice(2).widest).toBeCloseTo(Math.hypot(1, 1 / 1.2), 12);
    expect(advice(2).widestFromSurface).toBeCloseTo(Math.hypot(1, 2 / 1.2), 12);
    expect(advice(6)).toMatchObject({ place: 'too-thick', intoMm: 3, gapMm: 4 });
  });

  it('never makes the beam wider than the surface would, nor, within the depth of focus, its area more than double', () => {
    const mm = fc.double({ min: 0.1, max: 10, noNaN: true });
    fc.assert(
      fc.property(mm, mm, (thicknessMm, rayleighMm) => {
        const said = advice(thicknessMm, rayleighMm, 20);
        expect(said.widest).toBeLessThanOrEqual(said.widestFromSurface + 1e-12);
        if (said.place !== 'too-thick')
          expect(said.widest).toBeLessThanOrEqual(Math.SQRT2 * (1 + 1e-12));
      }),
    );
  });

  it('is refused where the nozzle would meet the sheet', () => {
    expect(focusAdvice({ gapMm: 3, rayleighMm: 1, thicknessMm: 6 })).toMatchObject({
      ok: false,
      problem: { code: 'focus-gap-too-small' },
    });
  });

  it('counts what is not known off the thickness that one height serves', () => {
    const depth = { value: 1.2, low: 1, high: 1.5 };
    expect(servedThicknessMm(depth, { value: 7, low: 6.9, high: 7.1 })).toBeCloseTo(1.8, 12);
    expect(servedThicknessMm(depth, { value: 7, low: 5, high: 9 })).toBe(0);
  });
});

describe('a fixed gauge', () => {
  const gap = { value: 7, low: 6.85, high: 7.15 };
  it('fits within what is known, is near within a quarter of the depth, else off', () => {
    const depth = { value: 1.2, low: 1, high: 1.5 };
    expect(checkGauge(7.1, gap, depth)).toMatchObject({ verdict: 'fits' });
    expect(checkGauge(7.5, gap, depth).verdict).toBe('near');
    expect(checkGauge(5.8, gap, depth)).toMatchObject({ verdict: 'off' });
    expect(checkGauge(5.8, gap, depth).byMm).toBeCloseTo(-1.2, 12);
    expect(checkGauge(7.6, gap, null).verdict).toBe('off');
  });
});
