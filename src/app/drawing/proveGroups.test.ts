import { expect, it } from 'vitest';
import { defaultPromise } from '../../core/reading/promise.ts';
import { proveOnDrawing } from './proveOnDrawing.ts';

const study = {
  machine: { maxPowerPct: 90, speedRangeMmPerS: [1, 100] as const },
  stock: { material: 'plywood', thicknessMm: 3 },
  cells: [12, 14, 16, 20, 24, 28].map((speedMmPerS) => ({
    powerPct: 30,
    speedMmPerS,
    passes: 1,
    grade: speedMmPerS < 20 ? ('out' as const) : ('stays' as const),
  })),
  tallies: [],
  promise: defaultPromise,
  ask: { powerPct: 30 },
};
const square = (x: number, paint: string): string =>
  `<path d="M${String(x)} 0h20v20h-20z" ${paint}/>`;
const drawing = (parts: readonly string[]): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="100mm" viewBox="0 0 200 100"><g id="all">${parts.join('')}</g></svg>`;
const red = 'fill="none" stroke="#ff0000"';
const blue = 'fill="none" stroke="#0000ff"';

const proven = (text: string, leaveOut: readonly string[] = []) => {
  const proof = proveOnDrawing({
    text,
    study,
    setting: { powerPct: 30, speedMmPerS: 12, passes: 1 },
    leaveOut,
  });
  if (!proof.ok) throw new Error(proof.problem.code);
  return proof.value;
};

it('splits a group of several colours, so that what is engraved can be left out', () => {
  const text = drawing([square(0, red), square(30, red), square(60, blue)]);
  const { groups, drawing: all } = proven(text);
  expect(groups.map(({ name, lines, cutMm }) => [name, lines, Math.round(cutMm)])).toEqual([
    ['all #ff0000', 2, 160],
    ['all #0000ff', 1, 80],
  ]);
  expect(all.parts).toBe(3);
  expect(proven(text, ['all #0000ff']).drawing).toMatchObject({ parts: 2, lines: 2 });
  expect(proven(drawing([square(0, red)])).groups[0]?.name).toBe('all');
});

it('leaves fills without a stroke out, unless there is nothing else', () => {
  const fill = 'fill="#00ff00" stroke="none"';
  const { groups, drawing: seen } = proven(drawing([square(0, red), square(30, fill)]));
  expect(seen.parts).toBe(1);
  expect(groups).toHaveLength(1);
  expect(proven(drawing([square(0, fill), square(30, fill)])).drawing.parts).toBe(2);
});
