import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import type { Grade } from '../reading/grade.ts';
import { fitStudy } from './fitStudy.ts';
import { proposeNextCard } from './nextCard.ts';

const cellsAt = (speeds: readonly number[], grade: Grade) =>
  speeds.map((speedMmPerS) => ({ powerPct: 30, speedMmPerS, grade, sheet: '1' }));

const wish = { cellsWanted: 8, settingsAtMost: 4 };

describe('the next card', () => {
  it('goes on from the fastest cell, twice as far, where all came out', () => {
    const cells = cellsAt([10, 14, 18, 22], 'out');
    const { cells: next, reason } = proposeNextCard(
      plainStudy({ cells, ask: { powerPct: 30 } }),
      wish,
    );
    const speeds = next.map((cell) => cell.speedMmPerS);
    expect(Math.min(...speeds)).toBeGreaterThan(22);
    expect(Math.max(...speeds)).toBeGreaterThanOrEqual(44);
    expect(reason.code).toBe('double-the-range-faster');
  });

  it('goes on from the slowest cell, half as fast, where none came out', () => {
    const cells = cellsAt([10, 14, 18, 22], 'stays');
    const { cells: next, reason } = proposeNextCard(
      plainStudy({ cells, ask: { powerPct: 30 } }),
      wish,
    );
    const speeds = next.map((cell) => cell.speedMmPerS);
    expect(Math.max(...speeds)).toBeLessThan(10);
    expect(Math.min(...speeds)).toBeLessThanOrEqual(5);
    expect(reason.code).toBe('double-the-range-slower');
  });

  it('reaches from where all came out up to the changeover where both kinds were seen', () => {
    const cells = [...cellsAt([10, 12, 14], 'out'), ...cellsAt([16, 18, 20], 'stays')];
    const { cells: next } = proposeNextCard(plainStudy({ cells, ask: { powerPct: 30 } }), wish);
    const speeds = next.map((cell) => cell.speedMmPerS);
    expect(Math.min(...speeds)).toBeLessThan(14);
    expect(Math.max(...speeds)).toBeGreaterThanOrEqual(14.5);
    expect(Math.max(...speeds)).toBeLessThan(20);
  });

  it('keeps to the cells and settings wished for and to the machine’s speeds, whatever was cut', () => {
    const cell = fc.record({
      powerPct: fc.integer({ min: 20, max: 60 }),
      speedMmPerS: fc.integer({ min: 2, max: 60 }),
      grade: fc.constantFrom<Grade>('out', 'hangs', 'stays'),
      sheet: fc.constantFrom('1', '2'),
    });
    fc.assert(
      fc.property(
        fc.array(cell, { maxLength: 12 }),
        fc.integer({ min: 2, max: 24 }),
        fc.integer({ min: 2, max: 8 }),
        (cells, cellsWanted, settingsAtMost) => {
          const study = plainStudy({
            cells,
            ask: { powerPct: 40 },
            machine: { maxPowerPct: 80, speedRangeMmPerS: [3, 50] },
          });
          const next = proposeNextCard(study, { cellsWanted, settingsAtMost });
          expect(next.cells).toHaveLength(cellsWanted);
          expect(next.settings).toBeLessThanOrEqual(settingsAtMost);
          expect(new Set(next.cells.map((one) => one.rung)).size).toBe(next.settings);
          for (const { speedMmPerS, powerPct } of next.cells) {
            expect(speedMmPerS).toBeGreaterThanOrEqual(3);
            expect(speedMmPerS).toBeLessThanOrEqual(50);
            expect(powerPct).toBe(40);
          }
        },
      ),
      { numRuns: 25 },
    );
  });
});

describe('the next card after a guess', () => {
  const reaches = (study: ReturnType<typeof plainStudy>): void => {
    const { recommended } = fitStudy(study);
    const next = proposeNextCard(study, wish);
    expect(recommended?.guess).toBe(true);
    expect(next.reason.code).toBe('reaches-the-answer');
    expect(next.worthCutting).toBe(true);
    const speeds = next.cells.map((cell) => cell.speedMmPerS);
    expect(Math.min(...speeds)).toBeLessThanOrEqual(recommended?.speedMmPerS ?? 0);
  };

  it('goes down to the answer, and is never called enough', () => {
    const cells = [...cellsAt([15, 15, 16, 16], 'out'), ...cellsAt([18, 18, 19, 19], 'stays')];
    reaches(plainStudy({ cells, ask: { powerPct: 30 } }));
  });

  it('is one where nothing but a habit is known: what one remembers is hearsay', () => {
    const habit = { powerPct: 30, speedMmPerS: 14, comesOut: 'always' } as const;
    reaches(plainStudy({ habit, ask: { powerPct: 30 } }));
  });
});
