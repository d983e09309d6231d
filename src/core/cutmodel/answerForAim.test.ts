import { describe, expect, it } from 'vitest';
import { undescribedMachine } from '../machine/machine.ts';
import { defaultPromise } from '../reading/promise.ts';
import { answerForAim } from './answerForAim.ts';
import type { CutStudy, StudyCell } from './cutStudy.ts';
import { fit } from './fit.ts';
import { fitStudy } from './fitStudy.ts';

/** A clean two-way card: the changeover lies at half the power setting in mm/s. */
const cells = [20, 30, 40].flatMap((powerPct) =>
  [0.3, 0.38, 0.46, 0.54, 0.62].map((share): StudyCell => {
    const grade = share < 0.5 ? 'out' : 'stays';
    return { powerPct, speedMmPerS: powerPct * share, passes: 1, grade };
  }),
);
const study: CutStudy = {
  machine: undescribedMachine,
  stock: { material: 'plywood', thicknessMm: 3 },
  cells,
  tallies: [],
  promise: defaultPromise,
  ask: {},
};

describe('the answer that suits an aim', () => {
  it('is the plain answer where the power is said', () => {
    const asked = { ...study, ask: { powerPct: 30 } };
    expect(answerForAim(fit(asked), 'gentlest')).toEqual(fitStudy(asked));
  });

  it.each([40, 41])('sends nobody to a power beyond the highest that cut, here %d', (highest) => {
    const tried = cells.map((cell) =>
      cell.powerPct === 40 ? { ...cell, powerPct: highest } : cell,
    );
    const { recommended, line } = answerForAim(fit({ ...study, cells: tried }), 'fastest');
    expect(recommended?.powerPct).toBe(highest);
    expect(line.at(-1)?.powerPct).toBe(100);
  });

  it('takes less power for a gentle tube, and still holds', () => {
    const fastest = answerForAim(fit(study), 'fastest').recommended;
    const gentlest = answerForAim(fit(study), 'gentlest').recommended;
    expect(gentlest?.powerPct).toBeLessThan(fastest?.powerPct ?? 0);
    expect(gentlest?.sureAtSpeedPct).toBeGreaterThanOrEqual(95);
  });
});
