import { describe, expect, it } from 'vitest';
import { compileStudy } from './compileStudy.ts';
import type { CutStudy } from './cutStudy.ts';
import { meanSdOf, posteriorOf, type Posterior } from './posterior.ts';
import { posteriorOfMany } from './posteriorOfMany.ts';
import { priors } from './priors.ts';
import { plainStudy } from '../../../test/plainStudy.ts';

const cells: CutStudy['cells'] = [10, 12, 13, 14, 15, 16, 18, 20].flatMap((speedMmPerS, i) =>
  ['a', 'b', 'c'].map((sheet, k) => ({
    powerPct: 30,
    speedMmPerS,
    passes: 1,
    sheet,
    grade: i + (k % 2) < 4 ? ('out' as const) : i < 5 ? ('hangs' as const) : ('stays' as const),
  })),
);
const order = { out: 38, hangs: 2, stays: 0, spoilt: 1, partLengthMm: 120 };
const setting = { powerPct: 30, speedMmPerS: 12, passes: 1 };

const summaryOf = (posterior: Posterior) => {
  const of = (column: (i: number) => number) => meanSdOf(posterior, column);
  const ofSheet = (sheet: number) => {
    const effect = posterior.sheetEffect(sheet);
    return of((i) => effect?.[i] ?? NaN);
  };
  return {
    lnV50: of((i) => posterior.lnV50[i] ?? 0),
    lnSigma: of((i) => Math.log(posterior.sigma[i] ?? 1)),
    lnHangBand: of((i) => Math.log(posterior.hangBand[i] ?? 1)),
    sheetSd: of((i) => posterior.sheetSd[i] ?? 0),
    flaws: of((i) => posterior.flawsPerMetre[i] ?? 0),
    firstSheet: ofSheet(0),
    lastSheet: ofSheet(posterior.model.sheets - 1),
  };
};

describe('the posterior with the effects of sheets integrated', () => {
  it.each([
    ['three cards', plainStudy({ cells })],
    ['three cards and an order', plainStudy({ cells, tallies: [{ setting, ...order }] })],
  ] as const)('is the one with an unknown for each sheet: %s', (_, study) => {
    const { model } = compileStudy(study);
    const large = posteriorOf(model, priors.links, 20_000);
    const drawn = summaryOf(large);
    const integrated = posteriorOfMany(model, priors.links);
    const found = summaryOf(integrated);
    for (const [name, { mean, sd }] of Object.entries(drawn)) {
      const own = found[name as keyof typeof found]; // the same keys by construction
      expect(Math.abs(own.mean - mean) / sd, name).toBeLessThan(0.12);
      expect(own.sd / sd, name).toBeGreaterThan(0.88);
      expect(own.sd / sd, name).toBeLessThan(1.14);
    }
    expect(Math.abs(integrated.logEvidence - large.logEvidence)).toBeLessThan(0.15);
  });

  it('is the one with an unknown for each sheet where cards are of several batches', () => {
    const ofBatches = cells.map((cell, i) => ({ ...cell, batch: `b${String(i % 3)}` }));
    const { model } = compileStudy(plainStudy({ cells: ofBatches }));
    const drawn = summaryOf(posteriorOf(model, priors.links, 20_000));
    // The scatter of three batches has so long a tail that its sd takes many points.
    const effort = { points: 1500, mostRounds: 24, enough: 4000, least: 1000 };
    const found = summaryOf(posteriorOfMany(model, priors.links, effort));
    for (const [name, { mean, sd }] of Object.entries(drawn)) {
      const own = found[name as keyof typeof found]; // the same keys by construction
      expect(Math.abs(own.mean - mean) / sd, name).toBeLessThan(0.08);
      expect(own.sd / sd, name).toBeGreaterThan(0.92);
      expect(own.sd / sd, name).toBeLessThan(1.08);
    }
  });

  // In z the effects of well-known batches run along a hyperbola with their scale: of such orders nothing settled.
  it.each([60, 240])('settles with %i orders of eleven batches', (orders) => {
    const { model } = compileStudy(
      plainStudy({
        cells,
        tallies: Array.from({ length: orders }, (_, i) => ({
          setting: { ...setting, speedMmPerS: 11 },
          ...order,
          out: 28 + ((i * 7) % 11),
          hangs: (i * 5) % 3,
          batch: `B-${String(i % 11)}`,
          sheet: `T-${String(i)}`,
        })),
      }),
    );
    const posterior = posteriorOfMany(model, priors.links);
    expect(posterior.converged).toBe(true);
    expect(posterior.effectivePoints).toBeGreaterThan(400);
  });

  it('gives the same bytes for the same model', () => {
    const { model } = compileStudy(plainStudy({ cells: cells.slice(0, 9) }));
    expect(posteriorOfMany(model, priors.links).lnV50).toEqual(
      posteriorOfMany(model, priors.links).lnV50,
    );
  });

  it('settles with forty sheets', () => {
    const many = Array.from({ length: 40 }, (_, k) =>
      cells.slice(0, 6).map((cell, i) => ({
        ...cell,
        sheet: String(k),
        speedMmPerS: cell.speedMmPerS + 0.1 * ((k * (i + 3)) % 37),
      })),
    ).flat();
    const { model } = compileStudy(plainStudy({ cells: many }));
    const posterior = posteriorOfMany(model, priors.links);
    expect(posterior.converged).toBe(true);
    expect(posterior.sheetEffect(39)).toHaveLength(posterior.count);
    expect(posterior.sheetEffect(40)).toBeUndefined();
  });
});
