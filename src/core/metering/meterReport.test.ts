import { describe, expect, it } from 'vitest';

import type { TubePoint } from '../machine/machine.ts';
import { undescribedMachine } from '../machine/machine.ts';
import { deliveredFraction } from '../tube/deliveredPower.ts';
import type { Metering } from './metering.ts';
import { meterReport, type MeterReport } from './meterReport.ts';

const upTo = (mostPct: number): readonly TubePoint[] =>
  [10, 20, 30, 40, 50, 60, 65, 68]
    .filter((powerPct) => powerPct <= mostPct)
    .flatMap((powerPct) => {
      const ma = 19 + 0.28 * (powerPct - 65);
      return [-0.05, 0.05].map((off) => ({ powerPct, currentMa: Number((ma + off).toFixed(2)) }));
    });

const reportOf = (readings: readonly TubePoint[], ratedCurrentMa?: number): MeterReport => {
  const metering: Metering = {
    version: 1,
    id: 'm1',
    at: '2031-05-06T07:08:09.000Z',
    ...(ratedCurrentMa === undefined ? {} : { ratedCurrentMa }),
    readings: [{ powerPct: 8, currentMa: 0 }, ...readings],
  };
  const report = meterReport(metering);
  if (!report.ok) throw new Error(report.problem.code);
  return report.value;
};

describe('what a metering says', () => {
  it('puts rated current at 65 % and 70 % beyond it (common practice, no source)', () => {
    const { rated } = reportOf(upTo(68), 19);
    if (rated?.reached !== true) throw new Error('19 mA is reached');
    expect(rated.at.value).toBeCloseTo(65, 6);
    expect(rated.keepToPct).toBe(64);
    expect(rated.keepToPct).toBeLessThanOrEqual(rated.at.low);
    expect(rated.at.high).toBeLessThan(70);
  });

  it('keeps below the last reading where that may already be rated current', () => {
    const { rated } = reportOf(upTo(65), 19.05);
    expect(rated).toMatchObject({ reached: false, mostPct: 65 });
    expect(rated?.keepToPct).toBeLessThan(65);
    expect(reportOf(upTo(50), 19).rated).toMatchObject({
      reached: false,
      mostPct: 50,
      keepToPct: 50,
    });
  });

  it('allows nothing where even the lowest reading is above rated current', () => {
    expect(reportOf(upTo(30), 2).rated).toMatchObject({ reached: false, keepToPct: 0 });
  });

  it('lists settings with what they draw, in per cent of rated where there is a rating', () => {
    const { lines } = reportOf(upTo(68), 19);
    expect(lines.map(({ powerPct }) => powerPct)).toEqual([
      10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 68,
    ]);
    for (const { currentMa, lowMa, highMa, ratedPct } of lines) {
      expect(lowMa).toBeLessThan(currentMa);
      expect(highMa).toBeGreaterThan(currentMa);
      expect(ratedPct).toBeCloseTo((100 * currentMa) / 19, 9);
    }
    expect(reportOf(upTo(68)).lines[0]).not.toHaveProperty('ratedPct');
    expect(reportOf(upTo(68))).not.toHaveProperty('rated');
  });

  it('agrees with what a machine delivers that is given its settings and currents', () => {
    const { lines, curve } = reportOf(upTo(68), 20);
    const machine = {
      ...undescribedMachine,
      ratedCurrentMa: 20,
      tubePoints: curve.between.x.map((powerPct, i) => ({
        powerPct,
        currentMa: curve.between.y[i] ?? NaN,
      })),
    };
    for (const { powerPct, ratedPct } of lines)
      expect(deliveredFraction(machine, powerPct)).toBeCloseTo((ratedPct ?? NaN) / 100, 9);
  });
});
