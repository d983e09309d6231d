import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import type { Grade } from '../reading/grade.ts';
import { evidenceIn, fastestOutAt } from './evidence.ts';

describe('the evidence of a study', () => {
  it('is what was cut on this thickness, spoilt and unread cells left out', () => {
    const found = evidenceIn(
      plainStudy({
        cells: [
          { powerPct: 30, speedMmPerS: 12, grade: 'out' },
          { powerPct: 30, speedMmPerS: 18, grade: 'hangs' },
          { powerPct: 30, speedMmPerS: 9, grade: 'out', spoilt: 'clip' },
          { powerPct: 30, speedMmPerS: 30 },
          { powerPct: 30, speedMmPerS: 40, grade: 'out', thicknessMm: 1.5 },
        ],
      }),
    );
    expect(found).toMatchObject({
      graded: 2,
      outCells: 1,
      notOutCells: 1,
      slowestMmPerS: 12,
      fastestMmPerS: 18,
      hasTally: false,
      hasHabit: false,
    });
    expect(fastestOutAt(found, 30)).toBe(12);
    expect(fastestOutAt(found, 29)).toBeNull();
  });

  it('never lets a setting be faster than something that came out at that power or less', () => {
    const cell = fc.record({
      powerPct: fc.integer({ min: 10, max: 60 }),
      speedMmPerS: fc.integer({ min: 2, max: 60 }),
      grade: fc.constantFrom<Grade>('out', 'hangs', 'stays'),
    });
    fc.assert(
      fc.property(
        fc.array(cell, { maxLength: 20 }),
        fc.integer({ min: 5, max: 70 }),
        (cells, at) => {
          const cap = fastestOutAt(evidenceIn(plainStudy({ cells })), at);
          const outs = cells.filter((one) => one.grade === 'out' && one.powerPct <= at);
          expect(cap).toBe(
            outs.length === 0 ? null : Math.max(...outs.map((one) => one.speedMmPerS)),
          );
        },
      ),
    );
  });
});
