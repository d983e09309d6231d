import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { trapezoid } from './trapezoid.ts';

const positive = (max: number) => fc.double({ min: 0.01, max, noNaN: true });
const moves = fc
  .record({ length: positive(500), limit: positive(300), accel: positive(5000) })
  .chain(({ length, limit, accel }) => {
    const speed = fc.double({ min: 0, max: limit, noNaN: true });
    return fc.record({
      lengthMm: fc.constant(length),
      entryMmPerS: speed,
      exitMmPerS: speed,
      limitMmPerS: fc.constant(limit),
      accelerationMmPerS2: fc.constant(accel),
    });
  });

describe('a trapezoid of speed', () => {
  it('takes v/a + s/v from rest to rest: 100 mm at 50 mm/s and 500 mm/s² in 2.1 s (kinematics)', () => {
    const move = trapezoid({
      lengthMm: 100,
      entryMmPerS: 0,
      exitMmPerS: 0,
      limitMmPerS: 50,
      accelerationMmPerS2: 500,
    });
    expect(move).toMatchObject({ feasible: true, shape: 'trapezoid', peakMmPerS: 50 });
    expect(move.feasible && move.seconds).toBeCloseTo(2.1, 12);
  });

  it('says why there is none', () => {
    const move = {
      lengthMm: 1,
      entryMmPerS: 0,
      exitMmPerS: 40,
      limitMmPerS: 50,
      accelerationMmPerS2: 500,
    };
    expect(trapezoid(move)).toEqual({ feasible: false, reason: 'too-short' });
    expect(trapezoid({ ...move, lengthMm: 1.6 }).feasible).toBe(true);
    expect(trapezoid({ ...move, limitMmPerS: 30 })).toEqual({
      feasible: false,
      reason: 'end-speed-above-limit',
    });
  });

  it('takes infinite limits as none', () => {
    const move = { lengthMm: 10, entryMmPerS: 0, exitMmPerS: 5, limitMmPerS: 20 };
    expect(trapezoid({ ...move, accelerationMmPerS2: Infinity })).toMatchObject({
      shape: 'trapezoid',
      seconds: 0.5,
      level: { lengthMm: 10 },
    });
    expect(trapezoid({ ...move, limitMmPerS: Infinity, accelerationMmPerS2: 100 })).toMatchObject({
      shape: 'triangle',
      level: { seconds: 0 },
    });
    expect(
      trapezoid({ ...move, limitMmPerS: Infinity, accelerationMmPerS2: Infinity }),
    ).toMatchObject({ feasible: true, seconds: 0 });
  });

  it('covers the length, keeps to the limit, and is not beaten by any lower peak', () => {
    fc.assert(
      fc.property(moves, fc.double({ min: 0, max: 1, noNaN: true }), (move, part) => {
        const found = trapezoid(move);
        if (!found.feasible) {
          const { entryMmPerS: v0, exitMmPerS: v1, accelerationMmPerS2: a } = move;
          expect(Math.abs(v1 * v1 - v0 * v0)).toBeGreaterThan(2 * a * move.lengthMm);
          return;
        }
        const { rising, level, falling, peakMmPerS } = found;
        const covered = rising.lengthMm + level.lengthMm + falling.lengthMm;
        expect(Math.abs(covered - move.lengthMm)).toBeLessThan(1e-8 * (1 + move.lengthMm));
        expect(peakMmPerS).toBeLessThanOrEqual(move.limitMmPerS * (1 + 1e-12));
        const least = Math.max(move.entryMmPerS, move.exitMmPerS);
        const slower = trapezoid({
          ...move,
          limitMmPerS: Math.max(1e-6, least + part * (peakMmPerS - least)),
        });
        if (slower.feasible) {
          expect(slower.seconds).toBeGreaterThanOrEqual(found.seconds * (1 - 1e-9));
        }
      }),
    );
  });
});
