import { describe, expect, it } from 'vitest';
import { laplaceProcess } from './laplaceProcess.ts';

const unit = (a: number, b: number): number => Math.exp(-((a - b) ** 2) / 2);

describe('a Gaussian process through a probit', () => {
  // The mode of ln Φ(f) − f²/2 solves f = φ(f)/Φ(f): 0.5061 (by bisection; Φ(0.5061) = 0.69360, φ = 0.35099).
  it('of one outcome has its mode where f = φ(f)/Φ(f)', () => {
    const process = laplaceProcess([0], [1], unit);
    expect(process?.mode[0]).toBeCloseTo(0.50605, 4);
  });

  // Exact: one outcome has evidence ½; two alike ¼ + arcsin(ρ)/2π with ρ = k₁₂/(1 + k₁₁), the orthant probability
  // (Sheppard 1898).
  it('has nearly the exact evidence of one and of two outcomes', () => {
    expect(Math.exp(laplaceProcess([0], [1], unit)?.logEvidence ?? NaN)).toBeCloseTo(0.5, 1);
    const exact = 0.25 + Math.asin(Math.exp(-0.125) / 2) / (2 * Math.PI);
    const near = Math.exp(laplaceProcess([0, 0.5], [1, 1], unit)?.logEvidence ?? NaN);
    expect(Math.abs(near / exact - 1)).toBeLessThan(0.05);
  });

  it('forgets the outcomes far away, and keeps to its trend there', () => {
    const far = laplaceProcess([0], [1], unit, (x) => 2 * x)?.at(40);
    expect(far?.mean).toBeCloseTo(80, 9);
    expect(far?.sd).toBeCloseTo(1, 9);
  });

  it('is the other way round when the outcomes are', () => {
    const [xs, labels] = [
      [0, 1, 3],
      [1, 1, -1],
    ];
    const one = laplaceProcess(xs, labels, unit)?.at(2);
    const other = laplaceProcess(
      xs,
      labels.map((y) => -y),
      unit,
    )?.at(2);
    expect(other?.mean).toBeCloseTo(-(one?.mean ?? NaN), 9);
    expect(other?.sd).toBeCloseTo(one?.sd ?? NaN, 9);
  });
});
