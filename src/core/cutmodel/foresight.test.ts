import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import { fit } from './fit.ts';
import { foresightOf } from './foresight.ts';

const cells = [10, 13, 17, 22].flatMap((speedMmPerS) =>
  [0, 1].map(() => ({
    powerPct: 30,
    speedMmPerS,
    grade: speedMmPerS < 15 ? ('out' as const) : ('stays' as const),
    sheet: '1',
  })),
);
const fitted = fit(plainStudy({ cells, ask: { powerPct: 30 } }));
const foresight = foresightOf(fitted, [30]);
const rung = (speedMmPerS: number, count: number) => ({ powerPct: 30, speedMmPerS, cells: count });

describe('foresight', () => {
  it('begins at the answer there is', () => {
    expect(foresight.lnFastestNow).toBeCloseTo(
      Math.log(fitted.decision.fastestHolding(30) ?? 0),
      1,
    );
  });

  it('expects nothing of a card whose outcome is certain', () => {
    const gain = foresight.lnFastestAfter([rung(0.5, 4)], 60) - foresight.lnFastestNow;
    expect(Math.abs(gain)).toBeLessThan(0.02);
  });

  it('expects more of a card about the changeover, and more of more cells', () => {
    const few = foresight.lnFastestAfter([rung(12, 2), rung(16, 2)], 60);
    const many = foresight.lnFastestAfter([rung(12, 8), rung(16, 8)], 60);
    expect(few).toBeGreaterThan(foresight.lnFastestNow);
    expect(many).toBeGreaterThan(few);
  });

  it('is the same whenever it is asked', () => {
    const card = [rung(11, 3), rung(15, 3)];
    expect(foresight.lnFastestAfter(card, 12)).toBe(foresight.lnFastestAfter(card, 12));
  });
});
