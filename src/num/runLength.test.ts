import { describe, expect, it } from 'vitest';

import { gaussLegendre } from './gaussLegendre.ts';
import { normalCdf } from './normal.ts';
import { cusumRunLength, ewmaRunLength, twoSidedCusumRunLength } from './runLength.ts';
import { seededRandom } from './seededRandom.ts';

describe('gaussLegendre', () => {
  it('integrates powers up to 2n − 1 exactly, and not the next', () => {
    const { x, weights } = gaussLegendre(5, 0, 2);
    const integral = (power: number): number =>
      x.reduce((sum, node, i) => sum + (weights[i] ?? NaN) * node ** power, 0);
    for (let power = 0; power <= 9; power += 1) {
      expect(integral(power)).toBeCloseTo(2 ** (power + 1) / (power + 1), 10);
    }
    expect(Math.abs(integral(10) - 2 ** 11 / 11)).toBeGreaterThan(1e-4);
  });
});

describe('average run lengths', () => {
  it('of a plain three-sigma chart are one over the chance of a signal', () => {
    // λ = 1 forgets the past: 370.4, as printed in every book.
    const chance = 2 * normalCdf(-3);
    expect(ewmaRunLength({ lambda: 1, width: 3, shift: 0 }).mean).toBeCloseTo(1 / chance, 7);
    const shifted = normalCdf(-2) + normalCdf(-4);
    expect(ewmaRunLength({ lambda: 1, width: 3, shift: 1 }).mean).toBeCloseTo(1 / shifted, 8);
  });

  it('are those of the well-known tables (Montgomery; Lucas & Saccucci; from memory)', () => {
    const page = { slack: 0.5, limit: 4 };
    expect(twoSidedCusumRunLength({ ...page, shift: 0 }).mean).toBeCloseTo(168, 0);
    expect(twoSidedCusumRunLength({ ...page, shift: 1 }).mean).toBeCloseTo(8.38, 2);
    expect(ewmaRunLength({ lambda: 0.1, width: 2.814, shift: 0 }).mean / 500).toBeCloseTo(1, 2);
    expect(ewmaRunLength({ lambda: 0.1, width: 2.814, shift: 1 }).mean).toBeCloseTo(10.3, 1);
  });

  it('are known to ten digits', () => {
    expect(cusumRunLength({ slack: 0.25, limit: 8, shift: 0.5 }).change).toBeLessThan(1e-10);
    expect(ewmaRunLength({ lambda: 0.05, width: 2.6, shift: 0 }).change).toBeLessThan(1e-10);
  });

  it('are what comes out when the chart is played', () => {
    const random = seededRandom(11);
    const [rounds, shift] = [4000, 0.75];
    let steps = 0;
    for (let round = 0; round < rounds; round += 1) {
      for (let sum = 0; sum <= 4; steps += 1)
        sum = Math.max(0, sum + random.normal() + shift - 0.5);
    }
    const { mean } = cusumRunLength({ slack: 0.5, limit: 4, shift });
    // Run lengths spread about as widely as their mean: four standard errors.
    expect(Math.abs(steps / rounds - mean)).toBeLessThan((4 * mean) / Math.sqrt(rounds));
  });
});
