import { describe, expect, it } from 'vitest';
import { expectedForCard, expectedV50 } from './priors.ts';

const at = (material: string, thicknessMm: number, nominalW: number, deliveredFraction = 1) =>
  expectedV50({ material, thicknessMm, nominalW, deliveredFraction }).v50MmPerS;

describe('the changeover expected by watts', () => {
  it('meets what was measured on southern pine at 240 W', () => {
    // McMillin C.W. & Harry J.E. 1971, Forest Products Journal 21(10):35-37: 41.95 mm/s at 6.35 mm, 6.18 mm/s at 25.4 mm.
    expect(at('softwood', 6.35, 240) / 41.95).toBeCloseTo(1, 1);
    expect(at('softwood', 25.4, 240) / 6.18).toBeGreaterThan(0.7);
    expect(at('softwood', 25.4, 240) / 6.18).toBeLessThan(1.4);
  });

  it('has a 40 W tube cut 3 mm plywood at 30 % at 3 to 5 mm/s', () => {
    // From memory, common practice.
    expect(at('plywood', 3, 40, 0.3)).toBeGreaterThan(3);
    expect(at('plywood', 3, 40, 0.3)).toBeLessThan(5);
  });

  it('goes with the watts that arrive, whichever tube they come from', () => {
    expect(at('plywood', 3, 130, 0.2)).toBeCloseTo(at('plywood', 3, 65, 0.4), 9);
  });

  it('is wider for a card where nobody said how strong the tube is', () => {
    const sheet = { material: 'plywood', thicknessMm: 3, deliveredFraction: 0.3 };
    const any = expectedForCard(sheet);
    expect(any.lnSd).toBeGreaterThan(1.5 * expectedForCard({ ...sheet, nominalW: 80 }).lnSd);
    for (const nominalW of [40, 130]) {
      const apart = Math.log(expectedForCard({ ...sheet, nominalW }).v50MmPerS / any.v50MmPerS);
      expect(Math.abs(apart)).toBeLessThan(any.lnSd);
    }
  });
});
