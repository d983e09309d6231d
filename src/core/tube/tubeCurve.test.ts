import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { undescribedMachine, type Machine, type TubePoint } from '../machine/machine.ts';
import { currentMaAt, powerPctAt, tubeCurve, type TubeCurve } from './tubeCurve.ts';

const withReadings = (tubePoints: readonly TubePoint[]): Machine => ({
  ...undescribedMachine,
  tubePoints,
});

const curveOf = (readings: readonly (readonly [number, number])[]): TubeCurve => {
  const points = readings.map(([powerPct, currentMa]) => ({ powerPct, currentMa }));
  const curve = tubeCurve(withReadings(points));
  if (curve?.ok !== true) throw new Error('these readings make a curve');
  return curve.value;
};

describe('tubeCurve', () => {
  const curve = curveOf([
    [8, 0],
    [10, 3.1],
    [20, 5.3],
    [30, 8.5],
    [50, 14.6],
    [65, 19],
  ]);

  it('gives the readings back, and the settings of their currents', () => {
    expect(currentMaAt(curve, 30)).toEqual({ currentMa: 8.5, extrapolated: false });
    expect(powerPctAt(curve, 8.5)?.powerPct).toBe(30);
    expect(powerPctAt(curve, 19)).toEqual({ powerPct: 65, extrapolated: false });
  });

  it('knows between which readings the tube began to fire, and draws nothing below', () => {
    expect(curve.firing).toEqual({ darkAtPct: 8, firesAtPct: 10 });
    expect(currentMaAt(curve, 3)).toEqual({ currentMa: 0, extrapolated: false });
    expect(
      curveOf([
        [20, 5.3],
        [30, 8.5],
      ]).firing,
    ).toBeNull();
  });

  it('goes straight on for ten points of setting, says so, and then says nothing', () => {
    const line = curveOf([
      [20, 6],
      [40, 12],
    ]);
    expect(currentMaAt(line, 50)).toEqual({ currentMa: 15, extrapolated: true });
    expect(currentMaAt(line, 10)).toEqual({ currentMa: 3, extrapolated: true });
    expect(currentMaAt(line, 50.1)).toBeNull();
    expect(currentMaAt(line, 9.9)).toBeNull();
    expect(powerPctAt(line, 15)).toEqual({ powerPct: 50, extrapolated: true });
    expect(powerPctAt(line, 15.1)).toBeNull();
    expect(powerPctAt(line, 2.9)).toBeNull();
    const upToTheTop = curveOf([
      [80, 20],
      [95, 24],
    ]);
    expect(currentMaAt(upToTheTop, 101)).toBeNull();
    expect(powerPctAt(upToTheTop, 25.5)).toBeNull();
  });

  it('never draws less at more setting, even where the readings do, and says by how much it moved them', () => {
    const bumpy = curveOf([
      [20, 5],
      [30, 9],
      [40, 8],
      [50, 14],
    ]);
    expect(bumpy.largestCorrectionMa).toBeCloseTo(0.5, 12);
    expect(currentMaAt(bumpy, 35)?.currentMa).toBeCloseTo(8.5, 12);
    expect(curve.largestCorrectionMa).toBe(0);
  });

  it('counts several readings at one setting, in any order, as their mean', () => {
    const twice = curveOf([
      [40, 12.2],
      [20, 6],
      [40, 11.8],
    ]);
    expect(currentMaAt(twice, 40)?.currentMa).toBeCloseTo(12, 12);
  });

  it('has no curve without readings, and refuses readings that cannot make one', () => {
    const codeOf = (points: readonly TubePoint[]): string => {
      const made = tubeCurve(withReadings(points));
      return made === null ? 'none' : made.ok ? 'made' : made.problem.code;
    };
    expect(codeOf([])).toBe('none');
    expect(tubeCurve(undescribedMachine)).toBeNull();
    expect(codeOf([{ powerPct: 30, currentMa: 8 }])).toBe('tube-readings-too-few');
    expect(
      codeOf([
        { powerPct: 130, currentMa: 8 },
        { powerPct: 30, currentMa: 7 },
      ]),
    ).toBe('tube-reading-impossible');
    expect(
      codeOf([
        { powerPct: 30, currentMa: -1 },
        { powerPct: 40, currentMa: 7 },
      ]),
    ).toBe('tube-reading-impossible');
    expect(
      codeOf([
        { powerPct: 30, currentMa: 0 },
        { powerPct: 40, currentMa: 0 },
      ]),
    ).toBe('tube-never-fired');
  });

  it('inverts itself wherever it says anything, for any readings', () => {
    const reading = fc.tuple(
      fc.integer({ min: 5, max: 95 }),
      fc.double({ min: 0.5, max: 30, noNaN: true }),
    );
    const setting = fc.double({ min: 0, max: 100, noNaN: true });
    fc.assert(
      fc.property(
        fc.uniqueArray(reading, { minLength: 2, maxLength: 8, selector: ([pct]) => pct }),
        setting,
        (readings, powerPct) => {
          const any = curveOf(readings);
          const drawn = currentMaAt(any, powerPct);
          if (drawn === null || drawn.currentMa === 0) return;
          const back = powerPctAt(any, drawn.currentMa * (1 + 1e-12));
          // The highest such setting: at or above, unless the curve runs flat out of the readings.
          if (back === null) return;
          expect(currentMaAt(any, back.powerPct)?.currentMa).toBeCloseTo(drawn.currentMa, 8);
        },
      ),
    );
  });
});
