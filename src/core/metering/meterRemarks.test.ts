import { param } from '../../../test/samples/param.ts';
import { describe, expect, it } from 'vitest';

import { seededRandom } from '../../num/seededRandom.ts';
import type { TubePoint } from '../machine/machine.ts';
import type { Metering } from './metering.ts';
import { meterRemarks } from './meterRemarks.ts';

type Change = (powerPct: number, round: number, ma: number) => number;

const lit = [10, 13, 15, 21, 27, 39, 51, 63];

/** Two rounds over an invented tube that fires at 9 %, read to 0.1 mA with a scatter of 0.12 mA, then changed. */
const meteringOf = (change: Change = (_pct, _round, ma) => ma, seed = 3, rounds = 2): Metering => {
  const random = seededRandom(seed);
  const readings = Array.from({ length: rounds }, (_, round) =>
    lit.map((powerPct): TubePoint => {
      const ma = 3 + 0.29 * (powerPct - 9) + 0.12 * random.normal();
      return {
        powerPct,
        currentMa: Number(Math.max(0, change(powerPct, round, ma)).toFixed(1)),
      };
    }),
  ).flat();
  return {
    version: 1,
    id: 'm1',
    at: '2031-05-06T07:08:09.000Z',
    ratedCurrentMa: 19,
    readings: [{ powerPct: 8, currentMa: 0 }, ...readings],
  };
};

const codes = (metering: Metering): readonly string[] =>
  meterRemarks(metering).map(({ code }) => code);

describe('questions about readings', () => {
  it('are not asked of good readings, but for one set in twenty at most', () => {
    const sets = Array.from({ length: 300 }, (_, i) => meteringOf(undefined, 100 + i));
    const questioned = sets.filter((metering) => codes(metering).length > 0).length;
    expect(questioned).toBeLessThanOrEqual(15);
  });

  it('name the setting that was misread or mistyped, both times', () => {
    const transposed = meteringOf((pct, _round, ma) => (pct === 39 ? 17.1 : ma));
    expect(meterRemarks(transposed)[0]).toMatchObject({
      code: 'meter-reading-doubtful',
      params: { powerPct: 39, currentMa: 17.1 },
    });
    const sagged = meteringOf((pct, _round, ma) => (pct === 63 ? ma - 5 : ma));
    expect(codes(sagged)).toContain('meter-reading-reversed');
    expect(meterRemarks(sagged).at(-1)?.params).toMatchObject({ lowPct: 51, highPct: 63 });
  });

  it('name the setting whose two readings disagree', () => {
    const once = meteringOf((pct, round, ma) => (pct === 27 && round === 1 ? ma + 1.5 : ma));
    expect(codes(once)).toContain('meter-repeats-apart');
    expect(param(meterRemarks(once)[0], 'powerPct')).toBe(27);
  });

  it('notice that the second round drew less all along', () => {
    const warming = meteringOf((_pct, round, ma) => (round === 1 ? 0.93 * ma : ma));
    expect(meterRemarks(warming).at(-1)).toMatchObject({
      code: 'meter-drifts',
      params: { which: 'less' },
    });
  });

  it('hold what is usual against readings that were taken once', () => {
    const once = meteringOf((pct, _round, ma) => (pct === 39 ? ma + 6.5 : ma), 5, 1);
    expect(codes(once)).toEqual(['meter-reading-doubtful', 'meter-no-repeats']);
    expect(codes(meteringOf(undefined, 5, 1))).toEqual(['meter-no-repeats']);
  });

  it('speak of the threshold, the rating, gaps and the water', () => {
    const good = meteringOf();
    const withReadings = (...more: readonly TubePoint[]): Metering => ({
      ...good,
      readings: [...good.readings, ...more],
    });
    expect(
      codes(withReadings({ powerPct: 9, currentMa: 0 }, { powerPct: 9, currentMa: 2.9 })),
    ).toEqual(['meter-flickers']);
    expect(codes(withReadings({ powerPct: 7, currentMa: 2.8 }))).toEqual([
      'meter-fired-below-dark',
    ]);
    expect(codes({ ...good, readings: good.readings.slice(1) })).toEqual(['meter-never-dark']);
    expect(codes(withReadings({ powerPct: 72, currentMa: 21.2 }))).toContain('meter-above-rated');
    expect(codes({ ...good, waterC: 31 })).toEqual(['meter-water-warm']);
    expect(codes({ ...good, waterC: 8 })).toEqual(['meter-water-cold']);
    expect(codes({ ...good, waterC: 20 })).toEqual([]);
    const gap = good.readings.filter(({ powerPct }) => powerPct !== 39);
    expect(codes({ ...good, readings: gap })).toEqual(['meter-wide-gap']);
  });
});
