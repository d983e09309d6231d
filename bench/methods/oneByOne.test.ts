import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/num/seededRandom.ts';
import { bruceton, brucetonLimit } from './bruceton.ts';
import { entropy, entropyOf } from './entropy.ts';
import { gaussianProcess } from './gaussianProcess.ts';
import { gridFirth } from './gridFirth.ts';
import { gridMl } from './gridMl.ts';
import { langlie, langlieNext } from './langlie.ts';
import { neyer, neyerNext } from './neyer.ts';
import { stepShop } from './stepShop.ts';
import { josephStep, threePhase } from './threePhase.ts';

const limits = { cellsAtMost: 24, settingsAtMost: 12 };
const trial = (lnSpeed: number, out: boolean) => ({ lnSpeed, out });

describe('methods that place cell by cell', () => {
  it('spend the cells they are given and no more', () => {
    for (const method of [bruceton, langlie, neyer, threePhase, entropy, gaussianProcess]) {
      const { shop, cut } = stepShop(17);
      method.play(shop, seededRandom(1), limits);
      expect(cut.length, method.name).toBe(24);
    }
  });

  it('find a changeover without scatter, or say nothing', () => {
    for (const method of [bruceton, langlie, neyer, threePhase, entropy, gaussianProcess]) {
      const { shop } = stepShop(21);
      const { speedMmPerS } = method.play(shop, seededRandom(1), limits);
      if (speedMmPerS !== null) {
        expect(speedMmPerS, method.name).toBeLessThan(21.2);
        expect(speedMmPerS, method.name).toBeGreaterThan(12);
      }
    }
    const { shop } = stepShop(21);
    expect(neyer.play(shop, seededRandom(1), limits).speedMmPerS).not.toBeNull();
  });

  it('of Langlie go half-way to the latest balance, else to the limit', () => {
    const ends = [0, 16] as const;
    expect(langlieNext([], ends)).toBe(8);
    expect(langlieNext([trial(8, true)], ends)).toBe(12);
    expect(langlieNext([trial(8, true), trial(12, false)], ends)).toBe(10);
    expect(langlieNext([trial(8, true), trial(12, false), trial(10, true)], ends)).toBe(11);
    expect(langlieNext([trial(8, false)], ends)).toBe(4);
  });

  it('of Neyer halve the gap, then go D-optimal on a shrinking guess', () => {
    const told = { least: 0, most: 4, sigmaGuess: 0.5 };
    expect(neyerNext([], told).lnSpeed).toBe(2);
    expect(neyerNext([trial(2, true)], told).lnSpeed).toBe(3);
    expect(neyerNext([trial(2, false)], told).lnSpeed).toBe(1);
    expect(neyerNext([trial(2, true), trial(3, false)], told)).toEqual({
      lnSpeed: 2.5,
      sigmaGuess: 0.5,
    });
    const close = neyerNext([trial(2, true), trial(2.4, false)], told);
    expect(close.sigmaGuess).toBeCloseTo(0.4, 12);
    expect(Math.abs(close.lnSpeed - 2.2)).toBeGreaterThan(0.5);
  });

  // A step of Joseph's is the best linear guess of where the quantile is: with θ ~ N(0, τ²) the response at 0 has the
  // mean b = E[y] and cov(θ, y) decides gain and what variance is left, here by summation over θ.
  it('of Joseph have gain and variance of the linear guess', () => {
    const [p, beta, variance] = [0.03, 10, 0.004];
    const step = josephStep(p, beta, variance);
    const z = -1.8807936081512511;
    let [weight, mean, cross] = [0, 0, 0];
    for (let t = -8; t <= 8; t += 0.001) {
      const theta = t * Math.sqrt(variance);
      const w = Math.exp((-t * t) / 2);
      const y = normal(z - beta * theta);
      weight += w;
      mean += w * y;
      cross += w * y * theta;
    }
    const expected = mean / weight;
    expect(step.expected).toBeCloseTo(expected, 5);
    expect(step.gain).toBeCloseTo(-cross / weight / (expected * (1 - expected)), 4);
    expect(step.variance).toBeLessThan(variance);
  });

  it('by entropy begin at the guessed changeover', () => {
    expect(entropyOf(0.5)).toBeCloseTo(Math.LN2, 12);
    const { shop, cut } = stepShop(17);
    entropy.play(shop, seededRandom(1), { ...limits, cellsAtMost: 1 });
    expect(cut[0]?.speedMmPerS).toBeCloseTo(17, 1);
  });

  it('of Dixon and Mood give no limit where their formula does not hold', () => {
    const level = (i: number, responded: boolean) => ({ level: i, responded });
    expect(brucetonLimit([level(0, false), level(1, true), level(0, false)], 1)).toBeNull();
  });
});

describe('the fixed grid by Firth', () => {
  it('answers where maximum likelihood cannot', () => {
    const { shop } = stepShop(17);
    expect(gridMl.play(shop, seededRandom(1), limits).speedMmPerS).toBeNull();
    expect(gridFirth.play(shop, seededRandom(1), limits).speedMmPerS ?? NaN).toBeLessThan(17);
  });

  it('has 25 cells where 24 are allowed, 9 where 12, 49 where 60', () => {
    for (const [cellsAtMost, cells] of [
      [24, 25],
      [12, 9],
      [60, 49],
    ] as const) {
      const { shop, cut } = stepShop(17);
      gridMl.play(shop, seededRandom(1), { ...limits, cellsAtMost });
      expect(cut.length).toBe(cells);
    }
  });
});

/** Φ by the series of Abramowitz & Stegun 26.2.10. */
const normal = (x: number): number => {
  if (Math.abs(x) > 6) return x > 0 ? 1 : 0;
  let [term, sum] = [x, x];
  for (let n = 1; n < 200; n += 1) {
    term *= (-x * x) / (2 * n);
    sum += term / (2 * n + 1);
  }
  return 0.5 + sum / Math.sqrt(2 * Math.PI);
};
