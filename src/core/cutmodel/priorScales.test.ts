import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalQuantile } from '../../num/normal.ts';
import { meanSdOfScale, rateAt, scaleAt, scaleSlopeAt, scaleWith } from './priorScales.ts';

/** Mean and standard deviation of what a standard normal z is turned into, at 20 000 even probabilities. */
const momentsOf = (valueAt: (z: number) => number) => {
  const n = 20_000;
  const values = Array.from({ length: n }, (_, i) => valueAt(normalQuantile((i + 0.5) / n)));
  const mean = values.reduce((sum, value) => sum + value, 0) / n;
  const sd = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / n);
  return { mean, sd };
};

const scales = fc.record({
  mode: fc.double({ min: 0, max: 0.2, noNaN: true }),
  scale: fc.double({ min: 0.005, max: 0.1, noNaN: true }),
});
const zs = fc.double({ min: -4, max: 4, noNaN: true });

describe('a belief about a scale of scatter', () => {
  it('is the half-normal where its mode is 0', () => {
    // Half-normal of scale 1: median 0.67448975, mean √(2/π), sd √(1 − 2/π) (Johnson, Kotz & Balakrishnan 1994, 13.10).
    expect(scaleAt({ mode: 0, scale: 1 }, 0)).toBeCloseTo(0.6744897501960817, 12);
    const { mean, sd } = meanSdOfScale({ mode: 0, scale: 0.04 });
    expect(mean).toBeCloseTo(0.04 * Math.sqrt(2 / Math.PI), 12);
    expect(sd).toBeCloseTo(0.04 * Math.sqrt(1 - 2 / Math.PI), 12);
  });

  it('has the moments that it says, never below 0, and its slope', () => {
    fc.assert(
      fc.property(scales, zs, (prior, z) => {
        const said = meanSdOfScale(prior);
        const found = momentsOf((at) => scaleAt(prior, at));
        expect(found.mean / said.mean).toBeCloseTo(1, 3);
        expect(found.sd / said.sd).toBeCloseTo(1, 2);
        expect(scaleAt(prior, z)).toBeGreaterThan(0);
        const rise = scaleAt(prior, z + 1e-4) - scaleAt(prior, z - 1e-4);
        expect(rise / 2e-4 / scaleSlopeAt(prior, z)).toBeCloseTo(1, 4);
      }),
      { numRuns: 20 },
    );
  });

  it('is found again from its moments', () => {
    fc.assert(
      fc.property(scales, (prior) => {
        const { mean, sd } = meanSdOfScale(prior);
        const again = scaleWith(mean, sd);
        expect(again.mode).toBeCloseTo(prior.mode, 6);
        expect(again.scale).toBeCloseTo(prior.scale, 6);
      }),
    );
  });

  it('is the half-normal of the same mean where it is wider than one can be', () => {
    const { mode, scale } = scaleWith(0.03, 0.06);
    expect(mode).toBeCloseTo(0, 9);
    expect(scale).toBeCloseTo(0.03 / Math.sqrt(2 / Math.PI), 9);
  });
});

describe('a belief about a rate', () => {
  it('is exponential where spread and mean are equal', () => {
    expect(rateAt({ mean: 0.5, sd: 0.5 }, 0).value).toBeCloseTo(0.5 * Math.LN2, 12);
  });

  it('is about the gamma of its moments else', () => {
    // Gamma of shape 4 and mean 1: 5 % 0.34158, 50 % 0.91802, 95 % 1.93841 (chi-square of 8 degrees, 2.7326, 7.3441, 15.5073, over 8).
    const at = (p: number) => rateAt({ mean: 1, sd: 0.5 }, normalQuantile(p)).value;
    expect(Math.abs(at(0.05) - 0.34158)).toBeLessThan(0.004);
    expect(Math.abs(at(0.5) - 0.91802)).toBeLessThan(0.004);
    expect(Math.abs(at(0.95) - 1.93841)).toBeLessThan(0.004);
  });

  it('is never below 0 and rises with z by its slope', () => {
    const rates = fc.record({
      mean: fc.double({ min: 0.05, max: 3, noNaN: true }),
      share: fc.double({ min: 0.1, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(rates, zs, ({ mean, share }, z) => {
        const prior = { mean, sd: share * mean };
        const { value, slope } = rateAt(prior, z);
        expect(value).toBeGreaterThanOrEqual(0);
        const rise = rateAt(prior, z + 1e-5).value - rateAt(prior, z - 1e-5).value;
        expect(Math.abs(rise / 2e-5 - slope)).toBeLessThan(1e-4 * Math.max(1, slope));
      }),
    );
  });
});
