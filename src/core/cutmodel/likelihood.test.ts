import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compileStudy } from './compileStudy.ts';
import { target } from './likelihood.ts';
import { links } from './links.ts';
import { layOut } from './model.ts';
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
  const layout = layOut(model);

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
          const value = goal.climb(z, gradient);
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
      const place = layOut(odd.model);
      const [link] = links;
      if (!link) throw new Error('no link');
      return target(odd.model, place, link).value(new Float64Array(place.size));
    };
    expect(at('stays')).toBeGreaterThan(at('out') + 3);
  });
});
