import { describe, expect, it } from 'vitest';
import { flawRate, name, openWorkshop } from '../workshops/powerLaw.ts';
import { cheapestKnownS } from './cheapestKnown.ts';
import { cutToTheEnd } from './cardsFirst.ts';
import { playOrder, type OrderMethod } from './referee.ts';
import { summariseOrders } from './summariseOrders.ts';

const workshop = { name, openWorkshop, flawRate };
const order = { parts: 60, partsPerSheet: 30, lengthMm: 180 };
const at = (speedMmPerS: number): OrderMethod => ({
  name: `at ${String(speedMmPerS)}`,
  play: (shop) => cutToTheEnd(shop, () => speedMmPerS),
});

describe('the referee of whole orders', () => {
  it('charges cut, typing and counting', () => {
    // So slow that nothing but a flaw fails: 60 good parts of 60 s and 2 s, one typing, each sheet counted.
    const played = playOrder({ ...workshop, openWorkshop: withoutFlaws }, at(3), 1, order);
    expect(played.noPlan).toBe(false);
    expect(played.sheets).toBe(2);
    expect(played.seconds).toBeCloseTo(60 * (180 / 3 + 2) + 25 + 2 * 20, 9);
    expect(played.notOutShare).toBeLessThan(1e-6);
    expect(played.brokenSheets).toBe(0);
  });

  it('knows a plan that no constant speed beats in the mean', () => {
    for (const share of [0.6, 0.75, 0.9]) {
      const orders = Array.from({ length: 20 }, (_, seed) => {
        const shop = openWorkshop(seed);
        const speed = shop.fastestKeeping(0.5, shop.typicalPowerPct) * share;
        return playOrder(workshop, at(speed), seed, order).excessPct;
      });
      expect(orders.reduce((a, b) => a + b, 0) / orders.length).toBeGreaterThan(-2);
    }
    const shop = openWorkshop(1);
    const once = cheapestKnownS(shop, order, flawRate);
    expect(cheapestKnownS(shop, { ...order, parts: 120 }, flawRate)).toBeCloseTo(2 * once, 9);
    expect(cheapestKnownS(shop, order, 0.1)).toBeGreaterThan(once);
  });

  it('tells sheets that break the promise, and orders that never end', () => {
    const fast = playOrder(workshop, at(150), 1, order);
    expect(fast.noPlan).toBe(true);
    expect(fast.brokenSheets).toBe(fast.sheets);
    const [summary] = summariseOrders([fast]);
    expect(summary).toMatchObject({ noPlanPct: 100, promiseBrokenPct: 100, excessPctMedian: null });
  });
});

const withoutFlaws = (seed: number): ReturnType<typeof openWorkshop> => {
  const shop = openWorkshop(seed);
  return { ...shop, cutCard: (cells) => cells.map(() => 'out' as const) };
};
