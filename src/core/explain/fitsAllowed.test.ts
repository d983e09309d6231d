import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import { fit } from '../cutmodel/fit.ts';
import type { Grade } from '../reading/grade.ts';
import { explainStudy } from './explain.ts';
import { fitsAllowed, mostWork, workOfFit } from './fitsAllowed.ts';

const grades: readonly Grade[] = ['out', 'hangs', 'stays'];

/** Shapes of which nothing falls into place: most of them need a fit to be left out. */
const contradictory = (cells: number) =>
  plainStudy({
    cells: Array.from({ length: cells }, (_, i) => ({
      powerPct: 20 + 5 * (i % 5),
      speedMmPerS: 8 + 2 * (i % 8),
      grade: grades[(i * i + (i >> 1)) % 3] ?? 'out',
      sheet: String(i % 5),
    })),
    ask: { powerPct: 30 },
  });

describe('the fits of an explanation', () => {
  it('are as many as their work allows, however they are asked for', () => {
    const { compiled, posterior } = fit(contradictory(20));
    const work = workOfFit(compiled.model, posterior.count);
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 40 }), { maxLength: 60 }), (wishes) => {
        const fits = fitsAllowed(compiled.model, posterior.count);
        const made = wishes.reduce((sum, wish) => sum + (fits.take(wish) ? wish : 0), 0);
        expect(made * work).toBeLessThanOrEqual(mostWork);
        // What is left after the last of them is less than was refused.
        const left = Math.floor(mostWork / work) - made;
        expect(fits.take(left + 1)).toBe(false);
        expect(fits.take(left)).toBe(true);
      }),
    );
  });

  it('take four times the work of twice the sheets, and no more of few sheets than of one', () => {
    const { model } = fit(contradictory(20)).compiled;
    const at = (sheets: number): number => workOfFit({ ...model, sheets }, 1000);
    expect(at(800) / at(400)).toBeCloseTo(4, 1);
    expect(at(6) / at(1)).toBeLessThan(1.1);
  });

  it('go to what matters first; the rest is rough and says so', () => {
    const { speed, calculation } = explainStudy(contradictory(50));
    expect(speed).toBeDefined();
    const { cells = [], cards = [] } = speed ?? {};
    expect(calculation.rough).toBeGreaterThan(0);
    const rough = cells.filter((left) => left?.by === 'rough-weights');
    expect(rough.length).toBeGreaterThan(0);
    // A shape gets no fit before the cards have theirs.
    expect(cards.map(({ by }) => by)).not.toContain('rough-weights');
    for (const left of rough) expect(Number.isFinite(left?.holdingShiftPct)).toBe(true);
  });
});
