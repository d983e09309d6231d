import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import { fit } from './fit.ts';
import { gradeProbabilities } from './gradeProbability.ts';

const cells = [8, 11, 14, 17, 20, 26].map((speedMmPerS) => ({
  powerPct: 30,
  speedMmPerS,
  grade: speedMmPerS < 15 ? ('out' as const) : ('stays' as const),
  sheet: '1',
}));
const { compiled, posterior } = fit(plainStudy({ cells, ask: { powerPct: 30 } }));
const odds = cells.map((_, i) => gradeProbabilities(compiled, posterior, i));

describe('how probable each grade was', () => {
  it('adds up to one', () => {
    for (const one of odds) {
      expect((one?.out ?? 0) + (one?.hangs ?? 0) + (one?.stays ?? 0)).toBeCloseTo(1, 9);
    }
  });

  it('falls for coming out, and rises for staying, the faster it was cut', () => {
    for (let i = 1; i < odds.length; i += 1) {
      expect(odds[i]?.out ?? 1).toBeLessThan(odds[i - 1]?.out ?? 0);
      expect(odds[i]?.stays ?? 0).toBeGreaterThan(odds[i - 1]?.stays ?? 1);
    }
  });

  it('is near certain far from the changeover', () => {
    expect(odds[0]?.out ?? 0).toBeGreaterThan(0.9);
    expect(odds[5]?.stays ?? 0).toBeGreaterThan(0.85);
  });
});
