import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import type { Grade } from '../reading/grade.ts';
import { fit } from './fit.ts';
import type { CutStudy } from './cutStudy.ts';
import { mistypedIn } from './mistyped.ts';
import { gradeOdds } from './remarks.ts';

const rung = (speedMmPerS: number, grades: readonly Grade[]) =>
  grades.map((grade) => ({ powerPct: 30, speedMmPerS, grade, sheet: '1' }));
const suspicionsIn = (study: CutStudy) => {
  const fitted = fit(study);
  return mistypedIn(fitted, gradeOdds(fitted));
};
const clean = [
  ...rung(10, ['out', 'out', 'out']),
  ...rung(13, ['out', 'out', 'out']),
  ...rung(16, ['out', 'hangs', 'out']),
  ...rung(19, ['hangs', 'stays', 'stays']),
  ...rung(23, ['stays', 'stays', 'stays']),
];

describe('mistypedIn', () => {
  it('finds the rung that was cut at another rung’s speed', () => {
    const cells = clean.map((cell) =>
      cell.speedMmPerS === 10 ? { ...cell, grade: 'stays' as const } : cell,
    );
    const [suspicion, ...others] = suspicionsIn(plainStudy({ cells, ask: { powerPct: 30 } }));
    expect(suspicion?.typed.speedMmPerS).toBe(10);
    expect(suspicion?.behavesLike.speedMmPerS).toBeGreaterThanOrEqual(19);
    expect(suspicion?.odds).toBeGreaterThan(30);
    expect(others).toEqual([]);
  });

  it('finds nothing on a card that fits', () => {
    expect(suspicionsIn(plainStudy({ cells: clean, ask: { powerPct: 30 } }))).toEqual([]);
  });
});
