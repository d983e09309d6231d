import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newtonMode } from '../../num/newtonMode.ts';
import { plainStudy } from '../../../test/plainStudy.ts';
import { compileStudy } from './compileStudy.ts';
import { target } from './likelihood.ts';
import { links } from './links.ts';
import { parameterLayout } from './model.ts';
import { settledBatches } from './settledBatches.ts';

const cells = [0, 1, 2, 3].flatMap((batch) =>
  [10, 12, 14, 16, 18].flatMap((speedMmPerS, i) =>
    [0, 1, 2].map((k) => ({
      powerPct: 30,
      speedMmPerS,
      passes: 1,
      batch: `b${String(batch)}`,
      sheet: 's',
      grade: i + (k % 2) < 2 + (batch % 3) ? ('out' as const) : ('stays' as const),
    })),
  ),
);
const { model } = compileStudy(plainStudy({ cells }));
const plain = { ...model, observations: model.observations.map((o) => ({ ...o, sheet: -1 })) };
const layout = parameterLayout({ ...plain, sheets: 0 });
const [link] = links;
if (link === undefined) throw new Error('there is a link');
const goal = target(plain, layout, link);
const settled = settledBatches(goal, newtonMode(goal.logDensity, new Float64Array(layout.size)));
const logDensity = settled.climbIn(goal);
const anywhere = fc.array(fc.double({ min: -1.5, max: 1.5, noNaN: true }), {
  minLength: layout.size,
  maxLength: layout.size,
});

/** Slopes by differences of the value. */
const slopesAt = (f: (y: Float64Array) => number, y: Float64Array): Float64Array =>
  y.map((_, d) => {
    const [up, down] = [Float64Array.from(y), Float64Array.from(y)];
    up[d] = (up[d] ?? NaN) + 1e-4;
    down[d] = (down[d] ?? NaN) - 1e-4;
    return (f(up) - f(down)) / 2e-4;
  });

describe('coordinates in which batches are settled', () => {
  it('lead there and back', () => {
    fc.assert(
      fc.property(anywhere, (values) => {
        const y = Float64Array.from(values);
        const z = new Float64Array(layout.size);
        settled.toZ(y, z);
        settled.toY(z).forEach((value, d) => {
          expect(value).toBeCloseTo(y[d] ?? NaN, 8);
        });
      }),
    );
  });

  it('say how much room a step takes', () => {
    fc.assert(
      fc.property(anywhere, (values) => {
        const y = Float64Array.from(values);
        const z = new Float64Array(layout.size);
        const ln = settled.toZ(y, z);
        // Only effects are stretched, each by itself.
        let sum = 0;
        for (let d = layout.batch; d < layout.size; d += 1) {
          const moved = Float64Array.from(y);
          const there = new Float64Array(layout.size);
          moved[d] = (moved[d] ?? NaN) + 1;
          settled.toZ(moved, there);
          sum += Math.log((there[d] ?? NaN) - (z[d] ?? NaN));
        }
        expect(sum).toBeCloseTo(ln, 8);
      }),
    );
  });

  it('have the slopes of the density in them', () => {
    fc.assert(
      fc.property(anywhere, (values) => {
        const y = Float64Array.from(values);
        // Beside the wall at a power exponent of 0.
        y[layout.powerExponent] = Math.abs(y[layout.powerExponent] ?? NaN);
        const slopes = new Float64Array(layout.size);
        logDensity(y, slopes);
        const byDifferences = slopesAt((at) => logDensity(at, new Float64Array(layout.size)), y);
        byDifferences.forEach((slope, d) => {
          expect(Math.abs((slopes[d] ?? NaN) - slope)).toBeLessThan(1e-3 * (1 + Math.abs(slope)));
        });
      }),
      { numRuns: 40 },
    );
  });

  it('leave the effects nothing to do with their scale', () => {
    const { point, curvature } = newtonMode(logDensity, settled.toY(new Float64Array(layout.size)));
    for (let d = layout.batch; d < layout.size; d += 1) {
      const own = curvature[d * layout.size + d] ?? NaN;
      expect(own).toBeGreaterThan(0.7);
      expect(own).toBeLessThan(1.4);
      expect(Math.abs(curvature[d * layout.size + layout.batchSd] ?? NaN)).toBeLessThan(0.3);
      expect(Math.abs(point[d] ?? NaN)).toBeLessThan(0.4);
    }
  });
});
