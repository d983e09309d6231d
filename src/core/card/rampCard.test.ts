import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { leastClearanceMm } from '../focus/focusRamp.ts';
import { undescribedMachine } from '../machine/machine.ts';
import { boxAround, liesWithin } from '../path/box.ts';
import type { CardDrawing } from './cardDrawing.ts';
import { rampCard, rampDrawing, type RampCard } from './rampCard.ts';
import { parseLayerName } from './settingWords.ts';

const ramp = { lengthMm: 120, blockMm: 8, nozzleGapMm: 12 };
const setting = { powerPct: 14, speedMmPerS: 30, passes: 1 };

const believed = (powerPct: number) => ({ v50MmPerS: 0.4 * powerPct, lnSd: 0.6 });

const cardOf = (over: Partial<Parameters<typeof rampCard>[0]> = {}): RampCard => {
  const card = rampCard({ ramp, setting, machine: undescribedMachine, believed, ...over });
  if (!card.ok) throw new Error(card.problem.code);
  return card.value;
};
const codeOf = (over: Partial<Parameters<typeof rampCard>[0]>): string => {
  const card = rampCard({ ramp, setting, machine: undescribedMachine, believed, ...over });
  return card.ok ? 'made' : card.problem.code;
};

describe('a ramp card', () => {
  it('has three lines, each weaker than the one before', () => {
    const { lines } = cardOf();
    expect(lines.map(({ letter }) => letter)).toEqual(['A', 'B', 'C']);
    expect(lines.map(({ setting: own }) => own.speedMmPerS)).toEqual([30, 43, 60]);
    expect(lines[0]?.dose).toBe(1);
    expect(lines[1]?.dose).toBeCloseTo(30 / 43, 12);
    const fast = cardOf({ setting: { ...setting, speedMmPerS: 90 } });
    expect(fast.lines.map(({ setting: own }) => [own.speedMmPerS, own.powerPct])).toEqual([
      [90, 14],
      [90, 10],
      [90, 7],
    ]);
  });

  it('is refused where the nozzle would be met, and where the machine cannot do it', () => {
    expect(codeOf({ ramp: { ...ramp, blockMm: 9.5 } })).toBe('ramp-meets-nozzle');
    expect(codeOf({ setting: { ...setting, powerPct: 101 } })).toBe('ramp-setting-out-of-range');
    expect(codeOf({ setting: { ...setting, speedMmPerS: 400 } })).toBe('ramp-setting-out-of-range');
    expect(codeOf({ setting: { ...setting, powerPct: 0 } })).toBe('ramp-setting-out-of-range');
  });

  const longest = ({ layers }: CardDrawing) =>
    layers.filter(({ kind }) => kind === 'rung').map(({ polylines }) => polylines.at(-1) ?? []);

  it('is drawn from the low end up, every stroke of it', () => {
    for (const line of longest(rampDrawing(cardOf()))) {
      const [from, to] = [line[0]?.[0] ?? NaN, line.at(-1)?.[0] ?? NaN];
      expect(from).toBeLessThan(to);
      expect(from).toBeLessThan(7);
    }
  });

  it('has layers that spell their settings, and stays on the strip', () => {
    const card = cardOf();
    const drawing = rampDrawing(card);
    expect(drawing.layers.map(({ name }) => parseLayerName(name)?.setting)).toEqual([
      setting,
      ...card.lines.map((line) => line.setting),
    ]);
    const strip = { leftMm: 0, bottomMm: 0, rightMm: drawing.widthMm, topMm: drawing.heightMm };
    for (const { polylines } of drawing.layers) {
      const box = boxAround(polylines);
      expect(box !== undefined && liesWithin(box, strip)).toBe(true);
    }
    expect(new Set(drawing.layers.map(({ colour }) => colour)).size).toBe(4);
  });

  it('never rises to within 3 mm of the nozzle, and is drawn shorter by the slope’s cosine', () => {
    const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(mm(60, 400), mm(0, 40), mm(0, 60), (lengthMm, blockMm, nozzleGapMm) => {
        const card = rampCard({
          ramp: { lengthMm, blockMm, nozzleGapMm },
          setting,
          machine: undescribedMachine,
          believed,
        });
        if (!card.ok) return;
        expect(nozzleGapMm - blockMm).toBeGreaterThanOrEqual(leastClearanceMm - 1e-6);
        const { widthMm } = rampDrawing(card.value);
        expect(Math.hypot(widthMm, blockMm)).toBeCloseTo(lengthMm, 6);
      }),
    );
  });
});
