import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import { fit } from '../cutmodel/fit.ts';
import type { Grade } from '../reading/grade.ts';
import { answerForAim } from '../cutmodel/answerForAim.ts';
import { omit } from '../omit.ts';
import { explain, explainStudy } from './explain.ts';
import { mostWork, otherFitsOf, taking } from './otherFits.ts';

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
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 40 }), { maxLength: 60 }),
        fc.double({ min: 1, max: 300, noNaN: true }),
        (wishes, each) => {
          const take = taking(1000, each);
          const made = wishes.reduce((sum, wish) => sum + (take(wish) ? wish : 0), 0);
          expect(made * each).toBeLessThanOrEqual(1000);
          // What is left after the last of them is less than was refused.
          const left = Math.floor(1000 / each) - made;
          expect(take(left + 1)).toBe(false);
          expect(take(left)).toBe(true);
        },
      ),
    );
    expect(taking(-5, 1)(1)).toBe(false);
  });

  it('are fine where there is time for it, and else like the answer’s own', () => {
    const small = fit(contradictory(20));
    const fine = otherFitsOf(small);
    expect(fine.whole.work / small.posterior.work).toBeGreaterThan(2);
    const large = fit(contradictory(150));
    expect(otherFitsOf(large).whole).toBe(large.posterior);
  });

  it('of many sheets integrate their effects as the answer did, and take about as much', () => {
    const cells = contradictory(60).cells.map((cell, i) => ({ ...cell, sheet: String(i % 12) }));
    const fitted = fit(plainStudy({ cells, ask: { powerPct: 30 } }));
    expect(fitted.posterior.isIntegrated).toBe(true);
    const { whole, fit: again } = otherFitsOf(fitted);
    expect(whole).toBe(fitted.posterior);
    const { work, lnV50 } = again(fitted.compiled.model);
    expect(lnV50).toEqual(fitted.posterior.lnV50);
    expect(work).toBe(fitted.posterior.work);
  });

  it('are counted for next shapes too, and what is not tried for want of time is named', () => {
    const { speed, calculation } = explainStudy(contradictory(100));
    const next = speed?.nextCells.flatMap(({ after }) => Object.values(after)) ?? [];
    const rough = next.filter(({ by }) => by === 'rough-weights').length;
    const ofCells = new Set(
      [...(speed?.cells ?? []), ...(speed?.rungs ?? []), ...(speed?.cards ?? [])].flatMap((left) =>
        left?.by === 'rough-weights' ? [JSON.stringify([left.shiftPct, left.paretoShape])] : [],
      ),
    ).size;
    expect(calculation.rough).toBe(rough + ofCells);
    const names = [...(speed?.whatIf ?? []).map(({ name }) => name), ...(speed?.untried ?? [])];
    expect(new Set(names).size).toBe(10);
  });

  it('leave out what the sheet says alone where the answer took all the time there is, and say so', () => {
    const [first, ...more] = contradictory(24).cells;
    if (first === undefined) throw new Error('no cell');
    const found = fit({ ...contradictory(12), history: [{ ...first, batch: 'before' }, ...more] });
    const answer = answerForAim(found, 'fastest');
    const tried = explain(found, answer);
    expect(tried.learnt.every(({ learntByOwnPct }) => learntByOwnPct !== undefined)).toBe(true);
    expect(tried.leaning?.verdict).toBeDefined();
    const dear = { ...found, posterior: { ...found.posterior, work: 1.01 * mostWork } };
    const { learnt, leaning } = explain(dear, answer);
    expect(leaning?.shapes).toBe(tried.leaning?.shapes);
    expect(leaning?.verdict).toBeUndefined();
    const withoutOwn = tried.learnt.map((one) => omit(one, 'learntByOwnPct'));
    expect(learnt).toEqual(withoutOwn);
  });

  it('go to what matters first; the rest is rough and says so', () => {
    const { speed, calculation } = explainStudy(contradictory(40));
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
