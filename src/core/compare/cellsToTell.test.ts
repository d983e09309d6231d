import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import { seededRandom } from '../../num/seededRandom.ts';
import { fit } from '../cutmodel/fit.ts';
import { thinned } from '../cutmodel/posterior.ts';
import { cellsToTell, chanceToTell, planPoints, type PlanPoint } from './cellsToTell.ts';
import { effectPriorSd } from './effectBetween.ts';

const wish = { lnGain: Math.log(1.05), power: 0.8, known: 0, ownSheets: false };
const point = (perCell: number, sheetSd = 0): PlanPoint => ({
  one: perCell,
  other: perCell,
  sheetSd,
});

/** The same by brute force: the estimate drawn, shrunk to the prior, its interval looked at. */
const simulated = (perCell: number, cells: number, sheetSd: number): number => {
  const random = seededRandom(11);
  const runs = 20_000;
  let told = 0;
  for (let i = 0; i < runs; i += 1) {
    const estimate =
      wish.lnGain + Math.sqrt(2 / (cells * perCell) + 2 * sheetSd ** 2) * random.normal();
    const precision = 1 / (2 / (cells * perCell) + 2 * sheetSd ** 2);
    const after = precision + 1 / effectPriorSd ** 2;
    if ((precision * estimate) / after - 1.959964 / Math.sqrt(after) > 0) told += 1;
  }
  return told / runs;
};

describe('cells to tell a difference', () => {
  it.each([
    [100, 40, 0],
    [100, 90, 0],
    [400, 20, 0],
    [400, 60, 0.015],
  ])(
    'gives the chance that drawing it gives: %d a cell, %d cells, sheets %d',
    (each, n, sheetSd) => {
      const chance = chanceToTell([point(each, sheetSd)], n, { ...wish, ownSheets: true });
      expect(chance).toBeCloseTo(simulated(each, n, sheetSd), 1.9);
    },
  );

  it('is the least number that suffices', () => {
    const points = [point(90), point(200)];
    const cells = cellsToTell(points, wish) ?? NaN;
    expect(chanceToTell(points, cells, wish)).toBeGreaterThanOrEqual(0.8);
    expect(chanceToTell(points, cells - 1, wish)).toBeLessThan(0.8);
  });

  it('comes near the textbook’s 2·(1.96 + 0.84)²/(I·gain²) where the prior hardly weighs', () => {
    // Two means with known variance at 5 % two-sided and power 0.8: any textbook of sample sizes.
    const cells = cellsToTell([point(150)], wish) ?? NaN;
    const textbook = (2 * (1.96 + 0.8416) ** 2) / (150 * wish.lnGain ** 2);
    expect(cells / textbook).toBeGreaterThan(0.98);
    expect(cells / textbook).toBeLessThan(1.06);
  });

  it('asks less for a greater difference, or where something is known; nothing where enough is', () => {
    const points = [point(100)];
    const cells = cellsToTell(points, wish) ?? NaN;
    expect(cellsToTell(points, { ...wish, lnGain: Math.log(1.1) })).toBeLessThan(cells / 3);
    expect(cellsToTell(points, { ...wish, known: 1000 })).toBeLessThan(cells);
    expect(cellsToTell(points, { ...wish, known: 1e5 })).toBe(0);
  });

  it('gives no number where the sheets scatter more than cells can mend', () => {
    expect(cellsToTell([point(100, 0.03)], { ...wish, ownSheets: true })).toBeNull();
    expect(cellsToTell([point(100, 0.03)], wish)).not.toBeNull();
  });

  it('finds most to be learnt at the changeover', () => {
    const speeds = [13, 14, 15, 16, 17, 18];
    const { posterior } = fit(
      plainStudy({
        cells: speeds.flatMap((speedMmPerS) =>
          (['out', 'hangs', 'stays'] as const).map((grade) => ({
            powerPct: 30,
            speedMmPerS,
            sheet: 'A',
            grade: speedMmPerS < 15 ? ('out' as const) : speedMmPerS > 16 ? 'stays' : grade,
          })),
        ),
      }),
    );
    const few = thinned(posterior, 200);
    const at = (lnSpeed: number) =>
      planPoints(few, {
        lnSpeeds: [lnSpeed],
        middle: (i) => few.lnV50[i] ?? 0,
        lnGain: wish.lnGain,
      });
    const mean = (lnSpeed: number): number =>
      at(lnSpeed).reduce((sum, { one }) => sum + one, 0) / 200;
    expect(mean(Math.log(15.5))).toBeGreaterThan(2 * mean(Math.log(12)));
    expect(mean(Math.log(15.5))).toBeGreaterThan(2 * mean(Math.log(20)));
  });
});
