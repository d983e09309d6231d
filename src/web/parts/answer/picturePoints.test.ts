import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { besideOneAnother, type PicturePoint } from './picturePoints.ts';

const room = { pxPerPct: 34, pxPerMmPerS: 19, signPx: 14 };
const point = fc.record({
  powerPct: fc.constant(40),
  speedMmPerS: fc.integer({ min: 80, max: 200 }).map((tenths) => tenths / 10),
  grade: fc.constantFrom('out', 'hangs', 'stays'),
}) satisfies fc.Arbitrary<PicturePoint>;

const nearest = (points: readonly PicturePoint[]): number =>
  Math.min(
    ...points.flatMap((a, i) =>
      points
        .slice(i + 1)
        .map((b) =>
          Math.max(
            Math.abs(a.powerPct - b.powerPct) * room.pxPerPct,
            Math.abs(a.speedMmPerS - b.speedMmPerS) * room.pxPerMmPerS,
          ),
        ),
    ),
  );

describe('signs of cells at one power', () => {
  it('never cover one another, and keep their speeds', () => {
    fc.assert(
      fc.property(fc.array(point, { minLength: 2, maxLength: 30 }), (points) => {
        const placed = besideOneAnother(points, room);
        expect(nearest(placed)).toBeGreaterThan(room.signPx * 0.99);
        expect(placed.map(({ speedMmPerS }) => speedMmPerS)).toEqual(
          points.map(({ speedMmPerS }) => speedMmPerS),
        );
      }),
    );
  });

  it('stay where they were cut where nothing is near', () => {
    const points = [10, 12, 14].map((speedMmPerS): PicturePoint => ({
      powerPct: 40,
      speedMmPerS,
      grade: 'out',
    }));
    expect(besideOneAnother(points, room)).toEqual(points);
  });

  it('stay on their own side of what was cut at the next power', () => {
    const six = Array.from({ length: 6 }, (): PicturePoint => {
      return { powerPct: 40, speedMmPerS: 12, grade: 'out' };
    });
    const placed = besideOneAnother(
      [...six, { powerPct: 42, speedMmPerS: 12, grade: 'out' }],
      room,
    );
    for (const { powerPct } of placed.slice(0, 6))
      expect(Math.abs(powerPct - 40) * room.pxPerPct).toBeLessThanOrEqual(34 - 7 + 0.001);
  });
});
