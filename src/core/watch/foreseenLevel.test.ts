import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalCdf, normalQuantile } from '../../num/normal.ts';
import { foreseenLevel } from './foreseenLevel.ts';
import type { Foreseen } from './watched.ts';

const kept = (outOf100Mean: number, surePct: number, outOf100 = 97): Foreseen => ({
  setting: { powerPct: 30, speedMmPerS: 14, passes: 1 },
  promise: { outOf100, surePct: 95, partLengthMm: 60, for: 'batch' },
  outOf100Mean,
  surePct,
});

describe('what was believed of a level', () => {
  it('says again what the book says, where a normal belief can', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 97.6, max: 99.5, noNaN: true }),
        fc.double({ min: 90, max: 98.5, noNaN: true }),
        (mean, sure) => {
          const level = foreseenLevel(kept(mean, sure));
          // E[Φ(k)] = Φ(mean/√(1 + sd²)), a well-known integral.
          expect(100 * normalCdf(level.mean / Math.hypot(1, level.sd))).toBeCloseTo(mean, 6);
          if (level.sd > 0.121 && level.sd < 1.19) {
            const p = normalQuantile(0.97);
            const told = 100 * normalCdf((level.mean - p) / level.sd);
            const [q, nearest] = [normalQuantile(mean / 100), normalQuantile(sure / 100)];
            const can = nearest >= Math.sqrt(q * q - p * p);
            if (can) expect(told).toBeCloseTo(sure, 4);
            else expect(told).toBeGreaterThanOrEqual(sure - 1e-6);
          }
        },
      ),
    );
  });

  it('is narrower the surer the promise was', () => {
    expect(foreseenLevel(kept(98.6, 98)).sd).toBeLessThan(foreseenLevel(kept(98.6, 92)).sd);
  });

  it('does without a sensible promise', () => {
    for (const level of [kept(100, 100), kept(50, 1), kept(0, 0), kept(99, 99.9, 50)].map(
      foreseenLevel,
    )) {
      expect(Number.isFinite(level.mean)).toBe(true);
      expect(level.sd).toBeGreaterThan(0);
    }
  });
});
