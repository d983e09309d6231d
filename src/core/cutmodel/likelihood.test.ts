import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compileStudy } from './compileStudy.ts';
import { target } from './likelihood.ts';
import { links } from './links.ts';
import { parameterLayout } from './model.ts';
import type { Tally } from '../reading/tally.ts';
import { plainStudy } from '../../../test/plainStudy.ts';

const study = plainStudy({
  cells: [
    { powerPct: 30, minPowerPct: 15, speedMmPerS: 14, grade: 'hangs', sheet: '2' },
    { powerPct: 30, minPowerPct: 20, speedMmPerS: 12, grade: 'out', sheet: '2' },
    { powerPct: 30, speedMmPerS: 12, grade: 'out', sheet: '1', air: 'pump' },
    { powerPct: 30, speedMmPerS: 16, grade: 'hangs', sheet: '1', air: 'pump' },
    { powerPct: 35, speedMmPerS: 20, grade: 'stays', sheet: '2', air: 'off', passes: 2 },
    { powerPct: 25, speedMmPerS: 11, grade: 'out', sheet: '2', batch: 'B', thicknessMm: 3.3 },
    { powerPct: 30, speedMmPerS: 14, spoilt: 'glue-pocket', sheet: '2' },
    { powerPct: 30, speedMmPerS: 13, grade: 'out', shapeLengthMm: 150 },
  ],
  tallies: [
    {
      setting: { powerPct: 30, speedMmPerS: 13, passes: 1 },
      out: 97,
      hangs: 2,
      stays: 1,
      spoilt: 1,
      partLengthMm: 160,
    },
  ],
  habit: { powerPct: 30, speedMmPerS: 12, comesOut: 'nearly' },
});

describe('the likelihood', () => {
  const { model } = compileStudy(study);
  const layout = parameterLayout(model);

  it('has a place for each parameter that something depends on', () => {
    expect(layout.passesExponent).toBeGreaterThanOrEqual(0);
    expect(layout.cornersExponent).toBeGreaterThanOrEqual(0);
    expect(layout.thicknessExponent).toBeGreaterThanOrEqual(0);
    expect(layout.batchSd).toBeGreaterThanOrEqual(0);
    expect(layout.size).toBe(10 + model.airLevels + model.batches + model.sheets);
  });

  it.each(links)('has the gradient that differences give, $name', (link) => {
    const goal = target(model, layout, link);
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1.5, max: 1.5, noNaN: true }), {
          minLength: layout.size,
          maxLength: layout.size,
        }),
        (values) => {
          const z = Float64Array.from(values);
          const gradient = new Float64Array(layout.size);
          const value = goal.logDensity(z, gradient);
          expect(value).toBeCloseTo(goal.value(z), 9);
          for (let i = 0; i < layout.size; i += 1) {
            const h = 1e-5;
            const up = Float64Array.from(z);
            const down = Float64Array.from(z);
            up[i] = (z[i] ?? 0) + h;
            down[i] = (z[i] ?? 0) - h;
            const slope = (goal.value(up) - goal.value(down)) / (2 * h);
            expect(Math.abs((gradient[i] ?? 0) - slope)).toBeLessThan(2e-4 * (1 + Math.abs(slope)));
          }
        },
      ),
      { numRuns: 25 },
    );
  });

  it('is worth less for a cell that ends against the odds', () => {
    const at = (grade: 'out' | 'stays'): number => {
      const odd = compileStudy(plainStudy({ cells: [{ powerPct: 30, speedMmPerS: 60, grade }] }));
      const place = parameterLayout(odd.model);
      const [link] = links;
      if (!link) throw new Error('no link');
      return target(odd.model, place, link).value(new Float64Array(place.size));
    };
    expect(at('stays')).toBeGreaterThan(at('out') + 3);
  });

  /** ln of the chance of a whole order at a rate of flaws: λ reckoned from z, σ and all else at their priors' medians. */
  const ofOrder = (counts: Partial<Tally>, flaws: number): number => {
    const counted = { out: 0, hangs: 0, stays: 0, spoilt: 0, partLengthMm: 120, ...counts };
    const setting = { powerPct: 30, speedMmPerS: 8, passes: 1 };
    const order = compileStudy(plainStudy({ tallies: [{ setting, ...counted }] }));
    const place = parameterLayout(order.model);
    const [link] = links;
    if (!link) throw new Error('no link');
    const z = new Float64Array(place.size);
    z[place.flaws] = flaws;
    return target(order.model, place, link).value(z);
  };
  it('learns flaws from parts counted as flaws, and not from parts counted as hanging', () => {
    // From next to none up to one part in twenty.
    const rise = (counts: Partial<Tally>): number => ofOrder(counts, 0.1) - ofOrder(counts, -2);
    const seen = rise({ out: 190, spoilt: 10 });
    const hung = rise({ out: 190, hangs: 6, stays: 4 });
    // As likely by a flaw as one in five that met one: ten such parts weigh ln 5 less each, where nothing else explains them.
    expect(seen).toBeGreaterThan(10);
    expect(seen - hung).toBeGreaterThan(5);
  });

  it('takes a part that was counted for misread less readily than a cell', () => {
    const cells = plainStudy({
      cells: Array.from({ length: 40 }, () => ({ powerPct: 30, speedMmPerS: 4, grade: 'stays' })),
    });
    const odd = compileStudy(cells);
    const place = parameterLayout(odd.model);
    const [link] = links;
    if (!link) throw new Error('no link');
    const z = new Float64Array(place.size);
    z[place.flaws] = -3;
    const ofCells = target(odd.model, place, link).value(z);
    expect(ofOrder({ stays: 40, partLengthMm: 60 }, -3)).toBeLessThan(ofCells);
  });
});
