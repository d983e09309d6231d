import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import {
  combineUncertainty,
  coverageFactor,
  limitsUncertainty,
  meanOfReadings,
} from './uncertainty.ts';

describe('combined uncertainty', () => {
  it('is that of the end gauge in the guide', () => {
    // JCGM 100:2008, H.1: 25, 9.7, 2.9 and 16.6 nm combine to 32 nm with 16.7 degrees, cut to 16; t₉₉(16) = 2.92.
    const { combined, effectiveDegrees } = combineUncertainty([
      { sensitivity: 1, u: 25, degrees: 18 },
      { sensitivity: 1, u: 9.7, degrees: 25.6 },
      { sensitivity: 1, u: 2.9, degrees: 50 },
      { sensitivity: 1, u: 16.6, degrees: 2 },
    ]);
    expect(combined).toBeCloseTo(32, 0);
    expect(effectiveDegrees).toBeCloseTo(16.7, 0);
    expect(coverageFactor(0.99, effectiveDegrees)).toBeCloseTo(2.92, 2);
  });

  it('of known inputs is normal, and of one input its own', () => {
    expect(coverageFactor(0.95, Infinity)).toBeCloseTo(1.959963984540054, 12);
    const one = combineUncertainty([{ sensitivity: -3, u: 2, degrees: 7 }]);
    expect(one).toEqual({ contributions: [6], combined: 6, effectiveDegrees: 7 });
  });

  it('has effective degrees between the fewest and the sum, in any unit', () => {
    const component = fc.record({
      sensitivity: fc.double({ min: 0.1, max: 5, noNaN: true }),
      u: fc.double({ min: 0.1, max: 5, noNaN: true }),
      degrees: fc.integer({ min: 1, max: 40 }),
    });
    fc.assert(
      fc.property(fc.array(component, { minLength: 1, maxLength: 6 }), (components) => {
        const { effectiveDegrees, combined } = combineUncertainty(components);
        const all = components.map(({ degrees }) => degrees);
        expect(effectiveDegrees).toBeGreaterThanOrEqual(Math.min(...all) - 1e-9);
        expect(effectiveDegrees).toBeLessThanOrEqual(all.reduce((a, b) => a + b, 0) + 1e-9);
        const inches = combineUncertainty(components.map((one) => ({ ...one, u: one.u / 25.4 })));
        expect(inches.combined * 25.4).toBeCloseTo(combined, 10);
        expect(inches.effectiveDegrees).toBeCloseTo(effectiveDegrees, 8);
      }),
    );
  });
});

describe('single inputs', () => {
  it('know readings and limits', () => {
    expect(meanOfReadings([1, 2, 3, 4])).toEqual({
      mean: 2.5,
      sd: Math.sqrt(5 / 3),
      u: Math.sqrt(5 / 3) / 2,
      degrees: 3,
    });
    expect(meanOfReadings([1])).toBeNull();
    // GUM 4.3.7, 4.3.9: a²/3 and a²/6; a²/2 for a sine.
    expect(limitsUncertainty(3) ** 2).toBeCloseTo(3, 12);
    expect(limitsUncertainty(6, 'triangular') ** 2).toBeCloseTo(6, 12);
    expect(limitsUncertainty(2, 'arcsine') ** 2).toBeCloseTo(2, 12);
  });
});
