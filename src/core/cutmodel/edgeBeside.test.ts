import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import '../../../test/fixedSeed.ts';
import { plainStudy } from '../../../test/plainStudy.ts';
import type { EdgeGrade } from '../reading/edge.ts';
import { answerForAim } from './answerForAim.ts';
import type { StudyCell } from './cutStudy.ts';
import { fit } from './fit.ts';
import { fitStudy } from './fitStudy.ts';

type EdgeOf = (speedMmPerS: number, powerPct: number) => EdgeGrade | undefined;

/** Four shapes at each of six speeds and one power or more; out below half of the power in mm/s. */
const cells = (edgeOf: EdgeOf, powers: readonly number[] = [40]): readonly StudyCell[] =>
  powers.flatMap((powerPct) =>
    [0.3, 0.36, 0.42, 0.48, 0.54, 0.6].flatMap((share) => {
      const speedMmPerS = Math.round(powerPct * share * 10) / 10;
      const isOut = share < 0.5;
      const edge = isOut ? edgeOf(speedMmPerS, powerPct) : undefined;
      const cell: StudyCell = {
        ...{ powerPct, speedMmPerS, passes: 1, grade: isOut ? 'out' : 'stays' },
        ...(edge === undefined ? {} : { edge }),
      };
      return [cell, cell, cell, cell];
    }),
  );

const frostedWhenFast: EdgeOf = (speed) => (speed > 13 ? 'frosted' : 'clear');
const ask = { powerPct: 40 };
const acrylic = { material: 'acrylic', thicknessMm: 3 };

describe('the edge beside the answer', () => {
  it('changes nothing where none was graded, to the byte, and nothing else where some were', () => {
    const plain = fitStudy(plainStudy({ stock: acrylic, cells: cells(() => undefined), ask }));
    expect('edge' in plain).toBe(false);
    const { edge, ...rest } = fitStudy(
      plainStudy({ stock: acrylic, cells: cells(frostedWhenFast), ask }),
    );
    expect(edge).toBeDefined();
    expect(JSON.stringify(rest)).toBe(JSON.stringify(plain));
  });

  it('prefers the clear edge that keeps the promise, and says what it costs in seconds a part', () => {
    const study = plainStudy({ stock: acrylic, cells: cells(frostedWhenFast), ask });
    const { edge, recommended } = fitStudy(study);
    const { preferred, here, best, edges } = edge ?? {};
    expect([best, edges]).toEqual(['clear', 16]);
    expect(recommended?.speedMmPerS).toBeGreaterThan(13);
    expect(here?.meanOf100).toBeLessThan(40);
    expect(preferred?.speedMmPerS).toBe(12);
    expect(preferred?.secondsMore).toBeCloseTo(60 / 12 - 60 / (recommended?.speedMmPerS ?? 0), 9);
    expect(preferred?.sureOfPromisePct).toBeGreaterThanOrEqual(95);
  });

  it('says that it is not known yet with too few, and leaves out what was cut in another way', () => {
    const few = cells((speed) => (speed < 12.1 ? 'clear' : undefined));
    expect(fitStudy(plainStudy({ stock: acrylic, cells: few, ask })).edge).toEqual({
      ...{ best: 'clear', taped: false, edges: 4, wanted: 6, here: null },
    });
    const all = cells(frostedWhenFast).map((cell, i) =>
      i % 2 === 0 ? cell : { ...cell, passes: 2 },
    );
    expect(fitStudy(plainStudy({ stock: acrylic, cells: all, ask })).edge?.edges).toBe(8);
  });

  it('looks at edges through tape by themselves, where there are most', () => {
    const all = cells(() => 'clean').map((cell, i) =>
      i % 4 === 0 || cell.edge === undefined ? cell : { ...cell, taped: true as const },
    );
    expect(fitStudy(plainStudy({ cells: all, ask })).edge).toMatchObject({
      taped: true,
      edges: 12,
    });
  });

  it('looks at other powers only where none was asked for', () => {
    const cleanAbove: EdgeOf = (_, powerPct) => (powerPct > 45 ? 'brown' : 'clean');
    const both = cells(cleanAbove, [40, 50]);
    const open = answerForAim(fit(plainStudy({ cells: both })), 'fastest');
    expect(open.recommended?.powerPct).toBe(50);
    expect(open.edge?.preferred?.powerPct).toBe(40);
    const asked = fitStudy(plainStudy({ cells: both, ask: { powerPct: 50 } }));
    expect(asked.recommended?.powerPct).toBe(50);
    expect(asked.edge?.preferred).toBeUndefined();
  });

  it('never prefers what does not keep the promise, nor above the limit, however edges were graded', () => {
    const grades = ['clear', 'frosted', 'flamed'] as const;
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...grades), { minLength: 32, maxLength: 32 }),
        fc.constantFrom(90, 97, 99),
        fc.constantFrom(45, 100),
        (drawn, outOf100, maxPowerPct) => {
          let next = 0;
          const study = plainStudy({
            stock: acrylic,
            cells: cells(() => drawn[(next += 1) % 32], [40, 50]),
            machine: { maxPowerPct, speedRangeMmPerS: [1, 100] },
            promise: { outOf100, surePct: 95, partLengthMm: 60, for: 'batch' },
          });
          const { edge, line, recommended } = answerForAim(fit(study), 'fastest');
          const preferred = edge?.preferred;
          if (preferred === undefined) return;
          const fastest = line.find(({ powerPct }) => powerPct === preferred.powerPct);
          expect(preferred.speedMmPerS).toBeLessThanOrEqual(fastest?.speedMmPerS ?? 0);
          expect(preferred.sureOfPromisePct).toBeGreaterThanOrEqual(94.9);
          expect(preferred.powerPct).toBeLessThanOrEqual(maxPowerPct);
          expect(preferred.speedMmPerS).not.toBe(recommended?.speedMmPerS);
        },
      ),
      { numRuns: 40 },
    );
  });
});
