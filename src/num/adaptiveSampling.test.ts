import { describe, expect, it } from 'vitest';
import { normalAtMode, sampleAdaptively } from './adaptiveSampling.ts';

const unit = (size: number): Float64Array =>
  Float64Array.from({ length: size * size }, (_, i) => (i % (size + 1) === 0 ? 1 : 0));

const meanOf = (sample: ReturnType<typeof sampleAdaptively>, f: (z: Float64Array) => number) => {
  const size = sample.z.length / sample.count;
  const most = sample.logWeight.reduce((a, b) => Math.max(a, b), -Infinity);
  let [sum, total] = [0, 0];
  for (let i = 0; i < sample.count; i += 1) {
    const weight = Math.exp((sample.logWeight[i] ?? 0) - most);
    sum += weight;
    total += weight * f(sample.z.subarray(i * size, (i + 1) * size));
  }
  return { mean: total / sum, logEvidence: most + Math.log(sum / sample.count) };
};

describe('sampling that adapts', () => {
  it('finds a normal far from where it began, and its evidence', () => {
    const at = [4, -3, 1];
    const sample = sampleAdaptively({
      size: 3,
      logDensity: (z) => -0.5 * at.reduce((sum, m, d) => sum + (((z[d] ?? 0) - m) / 0.3) ** 2, 0),
      starts: [normalAtMode(new Float64Array(3), unit(3))],
      guard: normalAtMode(new Float64Array(3), unit(3)),
      bendsAlong: 0,
      points: 300,
      mostRounds: 20,
      enough: 800,
    });
    const { mean, logEvidence } = meanOf(sample, (z) => z[1] ?? 0);
    expect(sample.effective).toBeGreaterThan(800);
    expect(mean).toBeCloseTo(-3, 1);
    // (2π)^(3/2)·0.3³
    expect(logEvidence).toBeCloseTo(1.5 * Math.log(2 * Math.PI) + 3 * Math.log(0.3), 1);
  });

  it('follows a density that bends', () => {
    // x normal, y about x² with little spread: E y = 1, E x²y = 3.
    const sample = sampleAdaptively({
      size: 2,
      logDensity: ([x = 0, y = 0]) => -0.5 * x * x - 0.5 * ((y - x * x) / 0.2) ** 2,
      starts: [normalAtMode(new Float64Array(2), unit(2))],
      guard: normalAtMode(new Float64Array(2), unit(2)),
      bendsAlong: 0,
      points: 400,
      mostRounds: 20,
      enough: 1500,
    });
    expect(meanOf(sample, ([, y = 0]) => y).mean).toBeCloseTo(1, 0);
    expect(Math.abs(meanOf(sample, ([x = 0]) => x).mean)).toBeLessThan(0.12);
  });

  it('draws the same points again', () => {
    const again = () =>
      sampleAdaptively({
        size: 2,
        logDensity: ([x = 0, y = 0]) => -0.5 * (x * x + y * y),
        starts: [normalAtMode(Float64Array.of(1, 1), unit(2))],
        guard: normalAtMode(new Float64Array(2), unit(2)),
        bendsAlong: 0,
        points: 50,
        mostRounds: 3,
        enough: 1e9,
      });
    expect(again().z).toEqual(again().z);
  });

  it('finds a second hill far from every start, as far as the guard reaches', () => {
    // Two normals of equal mass, 0.1 wide, at −1.5 and 1.5: mean 0, standard deviation √(1.5² + 0.1²).
    const hill = (x: number, at: number) => Math.exp(-0.5 * ((x - at) / 0.1) ** 2);
    const narrow = normalAtMode(Float64Array.of(-1.5), Float64Array.of(10));
    const { z, logWeight, count } = sampleAdaptively({
      size: 1,
      logDensity: ([x = 0]) => Math.log(hill(x, -1.5) + hill(x, 1.5)),
      starts: [narrow],
      guard: normalAtMode(new Float64Array(1), unit(1)),
      bendsAlong: 0,
      points: 400,
      mostRounds: 20,
      enough: 500,
    });
    const weights = logWeight.map(Math.exp);
    const sum = weights.reduce((a, b) => a + b, 0);
    let mean = 0;
    for (let i = 0; i < count; i += 1) mean += ((weights[i] ?? 0) * (z[i] ?? 0)) / sum;
    expect(Math.abs(mean)).toBeLessThan(0.15);
  });
});
