import { describe, expect, it } from 'vitest';
import { parameterLayout } from '../../src/core/cutmodel/model.ts';
import { compileStudy } from '../../src/core/cutmodel/compileStudy.ts';
import { links } from '../../src/core/cutmodel/links.ts';
import { target } from '../../src/core/cutmodel/likelihood.ts';
import { seededRandom } from '../../src/num/seededRandom.ts';
import { coverageOf } from './coverage.ts';
import { drawStudy } from './drawStudy.ts';

describe('calibration', () => {
  it('of even ranks covers what it says and is not surprised', () => {
    const even = Array.from({ length: 2000 }, (_, i) => (i + 0.5) / 2000);
    const { insidePct, pValue } = coverageOf(even);
    expect(insidePct).toEqual([50, 80, 95]);
    expect(pValue).toBeCloseTo(1, 6);
  });

  it('of posteriors that are too narrow is surprised', () => {
    const random = seededRandom(3);
    // Truths twice as far out as believed: Φ(2z).
    const ranks = Array.from({ length: 2000 }, () => (random.uniform() < 0.3 ? 0.01 : 0.5));
    const { insidePct, pValue } = coverageOf(ranks);
    expect(insidePct[2]).toBeLessThan(75);
    expect(pValue).toBeLessThan(1e-6);
  });

  it('draws studies that the likelihood likes better at the truth than at another one', () => {
    let better = 0;
    for (let seed = 0; seed < 40; seed += 1) {
      const { study, truth } = drawStudy(seededRandom(seed), seed % 2 === 1);
      const { model } = compileStudy(study);
      const link = links[0];
      if (link === undefined) throw new Error('no link');
      const goal = target(model, parameterLayout(model), link);
      const z = new Float64Array(goal.layout.size);
      const at = (lnV50: number): number => {
        z[goal.layout.lnV50] = (lnV50 - model.priors.lnV50.mean) / model.priors.lnV50.sd;
        return goal.value(z);
      };
      if (at(truth.lnV50) > at(truth.lnV50 + 0.5) && at(truth.lnV50) > at(truth.lnV50 - 0.5)) {
        better += 1;
      }
    }
    expect(better).toBeGreaterThan(30);
  });

  it('counts every part of a tally', () => {
    const { study } = drawStudy(seededRandom(8), true);
    const [tally] = study.tallies;
    expect(
      (tally?.out ?? 0) + (tally?.hangs ?? 0) + (tally?.stays ?? 0) + (tally?.spoilt ?? 0),
    ).toBe(40);
  });
});
