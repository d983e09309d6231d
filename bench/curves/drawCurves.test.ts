import { expect, it } from 'vitest';
import { drawCurves, type CurvePoint } from './drawCurves.ts';

const point = (change: Partial<CurvePoint>): CurvePoint => ({
  workshop: 'plain',
  cellsAtMost: 24,
  runs: 100,
  method: 'neyer',
  cells: 24,
  cards: 24,
  settingsTyped: 20,
  speedRatio: 0.9,
  speedRatioP10: 0.8,
  keptPct: 95,
  noAnswerPct: 0,
  ...change,
});

it('draws higher what is faster, hollow what is from few campaigns, and nothing where nobody answered', () => {
  const mark = /<path d="M([\d.]+) ([\d.]+)m-3 -3h6v6h-6z" fill="(#\w+)"/;
  const [slow, fast] = [0.5, 1].map((speedRatio) =>
    mark.exec(drawCurves([point({ speedRatio })], 'cells')),
  );
  expect(Number(slow?.[2])).toBeGreaterThan(Number(fast?.[2]));
  expect(slow?.[3]).toBe('#009E73');
  expect(mark.exec(drawCurves([point({ runs: 10 })], 'cells'))?.[3]).toBe('#fff');
  const none = drawCurves([point({ speedRatio: null, keptPct: null })], 'cells');
  // One mark for "no answer", two in the legend.
  expect(none.match(/m-3 -3h6v6h-6z/g)).toHaveLength(3);
});
