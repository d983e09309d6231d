import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { oddReading } from './oddReading.ts';

const points = (...pairs: readonly (readonly [number, number])[]) =>
  pairs.map(([powerPct, currentMa]) => ({ powerPct, currentMa }));

describe('a reading that cannot be right', () => {
  it('draws much less at a higher setting', () => {
    expect(oddReading({ ratedCurrentMa: 24, tubePoints: points([10, 20], [40, 5]) })).toEqual({
      powerPct: 40,
      currentMa: 5,
      odd: 'falls',
    });
  });

  it('is so small beside the rating that one of them is in another unit', () => {
    expect(
      oddReading({ ratedCurrentMa: 24, tubePoints: points([10, 0.003], [60, 0.024]) })?.odd,
    ).toBe('tiny');
  });

  it('is none where readings only scatter, where the tube is dark below, or where no rating is told', () => {
    const scatter = points([10, 0], [20, 5.3], [30, 9.9], [40, 9.4], [60, 18]);
    expect(oddReading({ ratedCurrentMa: 24, tubePoints: scatter })).toBeUndefined();
    expect(oddReading({ tubePoints: points([10, 20], [40, 5]) })).toBeUndefined();
    expect(oddReading({ ratedCurrentMa: 24, tubePoints: points([10, 0.1]) })).toBeUndefined();
    expect(oddReading({ ratedCurrentMa: 24 })).toBeUndefined();
  });

  it('is none on any curve that rises to the rating within the scale', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 1.2, noNaN: true }), (atFull) => {
        const tubePoints = points(
          ...[20, 35, 50, 80].map((pct) => [pct, (24 * atFull * (pct - 8)) / 92] as const),
        );
        expect(oddReading({ ratedCurrentMa: 24, tubePoints })).toBeUndefined();
      }),
    );
  });
});
