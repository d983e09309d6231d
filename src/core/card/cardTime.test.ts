import { describe, expect, it } from 'vitest';

import { demoRequest } from '../../../test/fixtures/cardRequest.ts';
import type { Card } from './card.ts';
import type { CardRequest } from './cardRequest.ts';
import { cardTime } from './cardTime.ts';
import { designCard } from './designCard.ts';
import { testShapeNames } from './testShapes.ts';

const cardOf = (change: Partial<CardRequest> = {}): Card => {
  const outcome = designCard({ ...demoRequest, ...change });
  if (!outcome.ok) throw new Error(outcome.problem.code);
  return outcome.value.card;
};

describe('the time of a card', () => {
  it.each(testShapeNames)(
    'of 5 speeds and 5 powers for 6 mm, cut as %s, lies within 2 to 20 min, as a card of that kind did at 6 min 55 s (common practice, no source)',
    (shape) => {
      const rungs = [8, 9, 10, 11, 12].flatMap((speedMmPerS) =>
        [20, 25, 30, 35, 40].map((powerPct) => ({ powerPct, speedMmPerS, passes: 1 })),
      );
      const card = cardOf({ shape, rungs, cellsEach: 1, sheetMm: [400, 300] });
      expect(card.cells).toHaveLength(25);
      const { seconds } = cardTime(card);
      expect(seconds).toBeGreaterThan(2 * 60);
      expect(seconds).toBeLessThan(20 * 60);
    },
  );

  it('is never less than length over speed, and lies in its band', () => {
    const card = cardOf();
    const time = cardTime(card);
    const cut = card.cells.reduce((sum, cell) => {
      const setting = card.rungs.find(({ letter }) => letter === cell.rung)?.setting;
      return sum + card.shapeLengthMm / (setting?.speedMmPerS ?? 1);
    }, 0);
    expect(time.lowSeconds).toBeGreaterThan(cut);
    expect(time.seconds).toBeGreaterThan(time.lowSeconds);
    expect(time.highSeconds).toBeGreaterThan(time.seconds);
    expect(time.layers.reduce((sum, { seconds }) => sum + seconds, 0)).toBeCloseTo(time.seconds, 9);
  });

  it('of a machine whose motion is known keeps to a narrow band, and goes where it says', () => {
    const card = cardOf();
    const motion = {
      accelerationMmPerS2: 1000,
      corner: { rule: 'junction-deviation', deviationMm: 0.02 },
      travelSpeedMmPerS: 250,
      lineDelayS: 0.05,
      jobDelayS: 4,
      timeErrorPct: 2,
    } as const;
    const time = cardTime(card, motion);
    expect(time.motion).toBe('known');
    expect(time.highSeconds / time.seconds).toBeCloseTo(1.04, 9);
    const { cuttingS, cornersS, travelS, delaysS } = time.goes;
    expect(cuttingS + cornersS + travelS + delaysS).toBeCloseTo(time.seconds, 9);
    // A quicker machine of the same rules.
    const quicker = cardTime(card, { ...motion, accelerationMmPerS2: 3000 });
    expect(quicker.seconds).toBeLessThan(time.seconds);
    expect(quicker.goes.cuttingS).toBeCloseTo(cuttingS, 9);
    const layers = time.layers.reduce((sum, { seconds }) => sum + seconds, 0);
    expect(layers + 4).toBeCloseTo(time.seconds, 9);
    expect(time.layers.filter(({ rung }) => rung !== undefined)).toHaveLength(card.rungs.length);
  });

  it('grows with more passes and with slower rungs', () => {
    const at = (speedMmPerS: number, passes: number): number =>
      cardTime(cardOf({ rungs: [{ powerPct: 34, speedMmPerS, passes }] })).seconds;
    expect(at(12, 1)).toBeGreaterThan(at(20, 1));
    expect(at(40, 2)).toBeGreaterThan(at(40, 1));
  });
});
