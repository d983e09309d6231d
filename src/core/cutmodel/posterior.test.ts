import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import type { Grade } from '../reading/grade.ts';
import { compileStudy } from './compileStudy.ts';
import { meanSdOf, posteriorOf, thinned } from './posterior.ts';
import { priors } from './priors.ts';

describe('the posterior', () => {
  it('is the prior where nothing was cut', () => {
    const { model } = compileStudy(plainStudy({ ask: { powerPct: 30 } }));
    const posterior = posteriorOf(model, priors.links, 1000);
    const lnSigma = meanSdOf(posterior, (i) => Math.log(posterior.sigma[i] ?? 1));
    const b = meanSdOf(posterior, (i) => posterior.powerExponent[i] ?? 0);
    expect(lnSigma.mean).toBeCloseTo(Math.log(0.08), 1);
    expect(lnSigma.sd).toBeCloseTo(0.5, 1);
    expect(b.mean).toBeCloseTo(1, 1);
    expect(b.sd).toBeCloseTo(0.3, 1);
    expect(posterior.logEvidence).toBeCloseTo(0, 2);
  });

  it('has finite weights that add up to one, on cards of every kind', () => {
    const cell = fc.record({
      powerPct: fc.integer({ min: 20, max: 60 }),
      speedMmPerS: fc.integer({ min: 2, max: 60 }),
      grade: fc.constantFrom<Grade>('out', 'hangs', 'stays'),
      sheet: fc.constantFrom('1', '2', '3'),
    });
    fc.assert(
      fc.property(fc.array(cell, { minLength: 1, maxLength: 24 }), (cells) => {
        const { model } = compileStudy(plainStudy({ cells }));
        const posterior = posteriorOf(model, priors.links, 200);
        const sum = posterior.weight.reduce((a, w) => a + w, 0);
        expect(sum).toBeCloseTo(1, 9);
        expect(posterior.sigma.every((sigma) => sigma > 0)).toBe(true);
      }),
      { numRuns: 40 },
    );
  });

  it('keeps its means and spreads when carried by fewer points', () => {
    const cells = [10, 12, 14, 16, 18, 20].map((speedMmPerS, i) => ({
      powerPct: 30,
      speedMmPerS,
      grade: i < 3 ? ('out' as const) : ('stays' as const),
    }));
    const { model } = compileStudy(plainStudy({ cells, ask: { powerPct: 30 } }));
    const whole = posteriorOf(model, priors.links);
    const fewer = thinned(whole, 600);
    expect(fewer.count).toBe(600);
    const lnSigma = [whole, fewer].map((p) => meanSdOf(p, (i) => Math.log(p.sigma[i] ?? 1)));
    const lnV50 = [whole, fewer].map((p) => meanSdOf(p, (i) => p.lnV50[i] ?? 0));
    // Resampled in the order of σ, so σ is kept best.
    expect(Math.abs((lnSigma[0]?.mean ?? 1) - (lnSigma[1]?.mean ?? 0))).toBeLessThan(0.005);
    expect((lnSigma[1]?.sd ?? 0) / (lnSigma[0]?.sd ?? 1)).toBeCloseTo(1, 2);
    expect(Math.abs((lnV50[0]?.mean ?? 1) - (lnV50[1]?.mean ?? 0))).toBeLessThan(
      0.15 * (lnV50[0]?.sd ?? 0),
    );
  });

  it('settles where earlier batches lie far apart', () => {
    const ladder = (v50: number, batch: string) =>
      [0.6, 0.7, 0.8, 0.9, 1.1, 1.25, 1.4, 1.6].map((part) => ({
        powerPct: 30,
        passes: 1,
        speedMmPerS: Math.round(2 * v50 * part) / 2,
        grade: part < 1 ? ('out' as const) : ('stays' as const),
        batch,
        sheet: batch,
      }));
    const { model } = compileStudy(
      plainStudy({
        history: [12, 15, 19, 24, 30].flatMap((v50) => ladder(v50, String(v50))),
        cells: ladder(17, 'now'),
        ask: { powerPct: 30 },
      }),
    );
    const posterior = posteriorOf(model, priors.links);
    expect(posterior.converged).toBe(true);
    expect(posterior.effectivePoints).toBeGreaterThan(50);
    // The batches' own spread is sd(ln v50) = 0.33: more than the prior's scale.
    const batchSd = meanSdOf(posterior, (i) => posterior.batchSd[i] ?? 0);
    expect(batchSd.mean).toBeGreaterThan(0.15);
  });

  it('stays finite on a card whose likelihood curves the wrong way along its scale of hanging', () => {
    const rung = (speedMmPerS: number, grades: readonly Grade[], sheet: string) =>
      grades.map((grade) => ({ powerPct: 47, speedMmPerS, grade, sheet }));
    const cells = [
      ...rung(37, ['stays', 'stays'], '1'),
      ...rung(7.5, ['out', 'out'], '1'),
      ...rung(21.5, ['stays', 'stays'], '1'),
      ...rung(12.5, ['hangs', 'out'], '1'),
      ...rung(12.5, ['out', 'out', 'out'], '2'),
      ...rung(11, ['out', 'out', 'out'], '2'),
      ...rung(14, ['out', 'out'], '2'),
    ];
    const { model } = compileStudy(
      plainStudy({
        cells,
        stock: { material: 'MDF', thicknessMm: 2.9116791779963895 },
        machine: { maxPowerPct: 90, speedRangeMmPerS: [0.5, 200] },
        ask: { powerPct: 47 },
      }),
    );
    const posterior = posteriorOf(model, priors.links, 1000);
    expect(posterior.effectivePoints).toBeGreaterThan(150);
  });
});
