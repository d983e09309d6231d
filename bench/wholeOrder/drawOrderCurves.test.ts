import { expect, it } from 'vitest';
import { drawOrderCurves, type OrderPoint } from './drawOrderCurves.ts';

const point = (change: Partial<OrderPoint>): OrderPoint => ({
  workshop: 'plain',
  parts: 300,
  orders: 48,
  method: 'cards-first',
  excessPctMedian: 30,
  excessPctP90: 50,
  notOutPctMean: 2,
  promiseBrokenPct: 0,
  noPlanPct: 0,
  ...change,
});
const mark = /<path d="M([\d.]+) ([\d.]+)m-3 -3h6v6h-6z" fill="(#\w+)"/;
const markOf = (change: Partial<OrderPoint>) => mark.exec(drawOrderCurves([point(change)]));

it('draws lower what costs less, further right what is ordered more, hollow what is from few orders', () => {
  expect(Number(markOf({ excessPctMedian: 10 })?.[2])).toBeGreaterThan(Number(markOf({})?.[2]));
  expect(Number(markOf({ parts: 900 })?.[1])).toBeGreaterThan(Number(markOf({})?.[1]));
  expect(markOf({})?.[3]).toBe('#D55E00');
  expect(markOf({ orders: 6 })?.[3]).toBe('#fff');
});

it('draws nothing where no order came to an end', () => {
  const none = drawOrderCurves([point({ excessPctMedian: null, excessPctP90: null })]);
  // One mark for parts not out, two in the legend.
  expect(none.match(/m-3 -3h6v6h-6z/g)).toHaveLength(3);
});
