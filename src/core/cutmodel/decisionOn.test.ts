import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import { fit } from './fit.ts';

const cells = [10, 12, 14, 16, 18, 20, 22, 24].map((speedMmPerS) => ({
  powerPct: 30,
  speedMmPerS,
  grade: speedMmPerS < 17 ? ('out' as const) : ('stays' as const),
  sheet: '1',
}));
const study = plainStudy({ cells, ask: { powerPct: 30 } });
const { decision } = fit(study);

describe('a decision', () => {
  it('is as sure of its fastest speed as was asked', () => {
    for (const sure of [50, 80, 95]) {
      const speed = decision.fastestHolding(30, sure) ?? 0;
      expect(100 * decision.sureAt(30, speed)).toBeCloseTo(sure, 0);
    }
  });

  it('puts half the shapes out at the middle of v50', () => {
    const v50 = decision.v50Quantile(30, 0.5) ?? 0;
    expect(decision.shareAt(30, v50)).toBeGreaterThan(0.4);
    expect(decision.shareAt(30, v50)).toBeLessThan(0.6);
  });

  it('never gets surer or better by going faster, nor worse by more power', () => {
    const speed = fc.double({ min: 5, max: 40, noNaN: true });
    const power = fc.integer({ min: 15, max: 60 });
    fc.assert(
      fc.property(speed, speed, power, power, (v1, v2, p1, p2) => {
        const [slow, fast] = v1 < v2 ? [v1, v2] : [v2, v1];
        const [weak, strong] = p1 < p2 ? [p1, p2] : [p2, p1];
        expect(decision.sureAt(weak, fast)).toBeLessThanOrEqual(
          decision.sureAt(weak, slow) + 1e-12,
        );
        expect(decision.shareAt(weak, fast)).toBeLessThanOrEqual(
          decision.shareAt(weak, slow) + 1e-9,
        );
        expect(decision.sureAt(strong, fast)).toBeGreaterThanOrEqual(
          decision.sureAt(weak, fast) - 1e-12,
        );
      }),
      { numRuns: 60 },
    );
  });

  it('promises a longer part less speed, and a batch not seen yet less than this one', () => {
    const holding = (promise: Partial<typeof study.promise>): number =>
      fit(
        plainStudy({ cells, ask: { powerPct: 30 }, promise: { ...study.promise, ...promise } }),
      ).decision.fastestHolding(30) ?? 0;
    const own = holding({});
    expect(holding({ partLengthMm: 600 })).toBeLessThan(own);
    expect(holding({ for: 'newBatch' })).toBeLessThan(own);
    expect(holding({ outOf100: 99 })).toBeLessThan(own);
  });

  it('knows nothing where the tube does not fire', () => {
    const machine = {
      maxPowerPct: 90,
      speedRangeMmPerS: [1, 100],
      ratedCurrentMa: 20,
      tubePoints: [
        { powerPct: 10, currentMa: 0 },
        { powerPct: 50, currentMa: 18 },
      ],
    } as const;
    const fitted = fit(plainStudy({ cells, machine, ask: { powerPct: 30 } }));
    expect(fitted.decision.fastestHolding(9)).toBeNull();
    expect(fitted.decision.sureAt(9, 5)).toBe(0);
  });
});
