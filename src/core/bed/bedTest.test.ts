import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { bedTestReport, gradesOf, type BedTestCell } from './bedTest.ts';
import { bedReport } from './bedVerdict.ts';
import { bedPlaces } from './place.ts';
import { scatterUnstudied } from './placeEffects.ts';

const grades = ['out', 'hangs', 'stays'] as const;
const cell: fc.Arbitrary<BedTestCell> = fc.record({
  id: fc.constant('FL1'),
  place: fc.constantFrom(...bedPlaces),
  grade: fc.constantFrom(...grades),
});

describe('a kept reading of the four corners', () => {
  it('counts every cell once, in its place', () => {
    fc.assert(
      fc.property(fc.array(cell, { maxLength: 40 }), (cells) => {
        const counts = gradesOf(cells);
        const all = bedPlaces.flatMap((place) => grades.map((grade) => counts[place][grade]));
        expect(all.reduce((sum, count) => sum + count, 0)).toBe(cells.length);
        const turned = gradesOf([...cells].reverse());
        expect(turned).toEqual(counts);
      }),
    );
  });

  it('says what its counts say, by the scatter of its day', () => {
    const cells = bedPlaces.flatMap((place) =>
      [1, 2, 3, 4].map((n) => ({
        id: `${place}${String(n)}`,
        place,
        grade: place === 'back-right' ? ('stays' as const) : ('out' as const),
      })),
    );
    const report = bedTestReport({ cells, scatter: scatterUnstudied });
    expect(report).toEqual(bedReport(gradesOf(cells), scatterUnstudied));
    expect(report.verdict).toMatchObject({ kind: 'place', place: 'back-right' });
    const wide = bedTestReport({ cells, scatter: { sigma: 0.3, hangBand: 0.06 } });
    expect(wide.effects.places['back-right'].chanceWeak).toBeLessThan(
      report.effects.places['back-right'].chanceWeak,
    );
  });
});
