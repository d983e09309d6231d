import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { watchChart } from './watchChart.ts';
import { watchedOrder, type Foreseen, type Watched } from './watched.ts';

const foreseen: Foreseen = {
  setting: { powerPct: 30, speedMmPerS: 14, passes: 1 },
  promise: { outOf100: 97, surePct: 95, partLengthMm: 60, for: 'batch' },
  outOf100Mean: 98.6,
  surePct: 95,
};

const order = (out: number, notOut: number, spoilt = 0, id = 'o'): readonly Watched[] =>
  watchedOrder({
    id,
    at: '2031-05-06T07:08:09.000Z',
    setting: foreseen.setting,
    out,
    hangs: notOut,
    stays: 0,
    spoilt,
    partLengthMm: 60,
  });
const chart = (...orders: (readonly Watched[])[]) => watchChart(foreseen, orders.flat());
const clean = Array.from({ length: 8 }, () => order(198, 2));

describe('the chart over orders', () => {
  it('says nothing of nothing, nor of an order that was all pockets', () => {
    expect(chart()).toEqual({ points: [], standing: 'nothing-yet' });
    expect(chart(order(0, 0, 7)).standing).toBe('nothing-yet');
  });

  it('foresees of the first order what the book foresaw', () => {
    const [first] = chart(order(990, 10)).points;
    // 1.4 in 100 of a thousand, to what a grid is good for.
    expect(first?.foreseenNotOut).toBeGreaterThan(13.3);
    expect(first?.foreseenNotOut).toBeLessThan(14.7);
  });

  it('stands as foreseen while parts come out as promised', () => {
    const { standing, points } = chart(...clean);
    expect(standing).toBe('as-foreseen');
    expect(points.every(({ alarm }) => !alarm)).toBe(true);
  });

  it('calls when a tenth of the parts begin to hang, and says since when', () => {
    const found = chart(...clean, order(180, 20), order(178, 22));
    expect(found.standing).toBe('alarm');
    expect(found.slipping?.sincePoint).toBe(8);
    expect(found.slipping?.speedLossPct).toBeGreaterThan(2);
    expect(found.slipping?.lowPct).toBeLessThanOrEqual(found.slipping?.speedLossPct ?? 0);
    expect(found.slipping?.highPct).toBeGreaterThanOrEqual(found.slipping?.speedLossPct ?? 0);
  });

  it('says more loss where more hang', () => {
    const few = chart(...clean, order(170, 30), order(170, 30)).slipping?.speedLossPct ?? NaN;
    const many = chart(...clean, order(120, 80), order(120, 80)).slipping?.speedLossPct ?? NaN;
    expect(many).toBeGreaterThan(few);
  });

  it('recovers, and keeps the alarm in mind', () => {
    const mended = Array.from({ length: 8 }, () => order(200, 0));
    expect(chart(...clean, order(150, 50), ...mended).standing).toBe('recovered');
  });

  it('counts a longer part as having more chances to fail', () => {
    const longer = order(194, 6).map((one) => ({
      ...one,
      groups: one.groups.map((group) => ({ ...group, lengthMm: 240 })),
    }));
    const [short] = chart(order(194, 6)).points;
    const [long] = chart(longer).points;
    expect(long?.score).toBeGreaterThan(short?.score ?? NaN);
  });

  it('scores a strip over its settings, and a bad one lower', () => {
    const strip = (out: number): readonly Watched[] => [
      {
        id: 's',
        at: '2031-05-06T07:08:09.000Z',
        kind: 'strip',
        groups: [
          { lnFaster: 0, lengthMm: 60, parts: 2, out: Math.min(2, out) },
          { lnFaster: 0.1, lengthMm: 60, parts: 2, out: Math.max(0, out - 2) },
        ],
        spoilt: 0,
      },
    ];
    const scores = [4, 3, 2, 1, 0].map((out) => chart(strip(out)).points[0]?.score ?? NaN);
    expect([...scores].sort((a, b) => b - a)).toEqual(scores);
    expect(scores[4]).toBeLessThan(-2);
  });

  it('does not mind pockets, and never scores one more failure better', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), fc.nat(40), fc.nat(20), (out, bad, pockets) => {
        const score = (more: number, spoilt = 0) =>
          chart(order(out, bad + more, spoilt)).points[0]?.score ?? NaN;
        expect(score(0, pockets)).toBe(score(0));
        expect(chart(order(out - 1, bad + 1)).points[0]?.score ?? -9).toBeLessThanOrEqual(
          score(0) + 1e-9,
        );
      }),
      { numRuns: 30 },
    );
  });
});
