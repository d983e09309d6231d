import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { beyondLimits } from '../card/firingLimits.ts';
import { parseLayerName } from '../card/settingWords.ts';
import type { Machine } from '../machine/machine.ts';
import { boxAround, liesWithin } from '../path/box.ts';
import { doseOf } from './doseLadder.ts';
import { linesOver } from './mark.ts';
import { burning, limitsBeside } from './markLimits.ts';
import { markOfStep, markStrip, markStripDrawing, stripKinds } from './markStrip.ts';

const cut = { powerPct: 40, speedMmPerS: 14, passes: 1 };
const stock = { material: 'birch plywood', nominalThicknessMm: 3 };
const machine: Machine = { maxPowerPct: 80, nominalW: 60, speedRangeMmPerS: [1, 400] };
const wish = { kind: 'shades', steps: 8, lineSpacingMm: 0.1 } as const;

describe('a marking strip', () => {
  it('has steps that climb, each with its setting in the name of its layer and beside it', () => {
    const limits = limitsBeside({ cut, stock }, machine);
    const strip = markStrip(wish, cut, limits);
    if (!strip.ok) throw new Error(strip.problem.code);
    const { settings } = strip.value;
    expect(settings).toHaveLength(8);
    // 60 mm of band at 1000 mm/s²: a quarter of it brings the head to √(2 · 1000 · 15) = 173 mm/s.
    expect(Math.max(...settings.map(({ speedMmPerS }) => speedMmPerS))).toBeLessThanOrEqual(173.5);
    const doses = settings.map((setting) =>
      doseOf(setting, { ...limits, linesOver: linesOver(0.1) }),
    );
    expect(doses).toEqual(doses.toSorted((a, b) => a - b));
    const { layers, widthMm, heightMm } = markStripDrawing(strip.value);
    expect(layers.slice(1).map(({ name }) => parseLayerName(name)?.setting)).toEqual(settings);
    // 6 mm filled at 0.1 mm are 61 lines.
    expect(layers.slice(1).map(({ polylines }) => polylines.length)).toEqual(
      settings.map(() => 61),
    );
    const box = boxAround(layers.flatMap(({ polylines }) => polylines));
    expect(
      box !== undefined &&
        liesWithin(box, { leftMm: 0, bottomMm: 0, rightMm: widthMm, topMm: heightMm }),
    ).toBe(true);
  });

  it('never has a step beyond a limit, on any sheet, cut and machine', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...stripKinds),
        fc.integer({ min: 3, max: 16 }),
        fc.constantFrom(0.05, 0.1, 0.3),
        fc.integer({ min: 2, max: 60 }),
        fc.constantFrom('birch plywood', 'acrylic', 'paper'),
        fc.integer({ min: 60, max: 600 }),
        (kind, steps, lineSpacingMm, speedMmPerS, material, fastest) => {
          const on: Machine = { ...machine, speedRangeMmPerS: [1, fastest] };
          const of = { kind, steps, lineSpacingMm };
          const limits = limitsBeside(
            { cut: { ...cut, speedMmPerS }, stock: { ...stock, material } },
            on,
          );
          const strip = markStrip(of, cut, limits);
          if (!strip.ok) return;
          for (const setting of strip.value.settings)
            expect(beyondLimits(burning(markOfStep(of, setting)), 'marks', limits)).toEqual([]);
        },
      ),
      { numRuns: 150 },
    );
  });
});
