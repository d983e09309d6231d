import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import {
  alongAtMm,
  checkedRamp,
  gapAtMm,
  leastClearanceMm,
  rampAbout,
  sineOf,
} from './focusRamp.ts';

const ramp = { lengthMm: 120, blockMm: 8, nozzleGapMm: 12 };

const codeOf = (outcome: ReturnType<typeof checkedRamp>): string =>
  outcome.ok ? 'good' : outcome.problem.code;

describe('a focus ramp', () => {
  it('gains z = s·sin θ along it', () => {
    expect(sineOf(ramp)).toBeCloseTo(8 / 120, 12);
    expect(gapAtMm(ramp, 0)).toBe(12);
    expect(gapAtMm(ramp, 60)).toBeCloseTo(8, 12);
    expect(alongAtMm(ramp, 8)).toBeCloseTo(60, 12);
  });

  it('is refused where less than 3 mm would be left under the nozzle', () => {
    expect(codeOf(checkedRamp({ ...ramp, blockMm: 9 }))).toBe('good');
    expect(codeOf(checkedRamp({ ...ramp, blockMm: 9.1 }))).toBe('ramp-meets-nozzle');
    expect(codeOf(checkedRamp({ ...ramp, nozzleGapMm: 2 }))).toBe('ramp-meets-nozzle');
    expect(codeOf(checkedRamp({ ...ramp, blockMm: NaN }))).toBe('ramp-meets-nozzle');
    expect(checkedRamp({ ...ramp, blockMm: 10 })).toMatchObject({
      problem: { params: { mostMm: 9 } },
    });
  });

  it('is refused where it is too short, too flat or too steep', () => {
    expect(codeOf(checkedRamp({ ...ramp, lengthMm: 40 }))).toBe('ramp-too-short');
    expect(codeOf(checkedRamp({ ...ramp, blockMm: 0.5 }))).toBe('ramp-too-flat');
    expect(codeOf(checkedRamp({ lengthMm: 70, blockMm: 20, nozzleGapMm: 40 }))).toBe(
      'ramp-too-steep',
    );
  });

  it('about a believed focus has it in its middle, as tall as the clearance allows', () => {
    expect(rampAbout(7, 120)).toEqual({
      ok: true,
      value: { lengthMm: 120, blockMm: 8, nozzleGapMm: 11 },
    });
    expect(codeOf(rampAbout(3.4, 120))).toBe('ramp-no-room');
    fc.assert(
      fc.property(
        fc.double({ min: 4, max: 60, noNaN: true }),
        fc.double({ min: 60, max: 400, noNaN: true }),
        (believedMm, lengthMm) => {
          const made = rampAbout(believedMm, lengthMm);
          if (!made.ok) throw new Error(made.problem.code);
          const along = alongAtMm(made.value, believedMm);
          expect(along / lengthMm).toBeGreaterThan(0.4);
          expect(along / lengthMm).toBeLessThan(0.6);
          expect(gapAtMm(made.value, lengthMm)).toBeGreaterThanOrEqual(leastClearanceMm - 1e-6);
        },
      ),
    );
  });
});
