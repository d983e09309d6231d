import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { valueAt } from '../../num/monotoneCubic.ts';
import { seededRandom } from '../../num/seededRandom.ts';
import type { Machine } from '../machine/machine.ts';
import type { Outcome } from '../problem.ts';
import { doseOf } from './doseLadder.ts';
import { evenShades, toneReadings, type ShadesRead } from './evenShades.ts';
import { linesOver } from './mark.ts';
import { limitsBeside, markProblem } from './markLimits.ts';
import { markOfStep, markStrip } from './markStrip.ts';
import { toneCurve } from './toneCurve.ts';

const valueOf = <Value>(outcome: Outcome<Value>): Value => {
  if (!outcome.ok) throw new Error(outcome.problem.code);
  return outcome.value;
};

const cut = { powerPct: 40, speedMmPerS: 14, passes: 1 };
const machine: Machine = { maxPowerPct: 80, nominalW: 60, speedRangeMmPerS: [1, 400] };
const limits = limitsBeside(
  { cut, stock: { material: 'birch plywood', nominalThicknessMm: 3 } },
  machine,
);
const strip = valueOf(markStrip({ kind: 'shades', steps: 8, lineSpacingMm: 0.1 }, cut, limits));
const doses = strip.settings.map((setting) =>
  doseOf(setting, { ...limits, linesOver: linesOver(0.1) }),
);
const fastest = Math.max(...strip.settings.map(({ speedMmPerS }) => speedMmPerS));
const read = (lightness: ShadesRead['lightness'], part: Partial<ShadesRead> = {}) =>
  evenShades(strip, { lightness, by: 'meter', count: 4, ...part }, cut, limits);

describe('even shades', () => {
  it('of readings on a straight line lie a third of it apart', () => {
    const even = doses.map((_, i) => 0.02 * 12 ** (i / 7));
    const { rising } = valueOf(
      toneCurve(
        even.map((dose, i) => ({ dose, lightness: 80 - 5 * i })),
        1.5,
      ),
    );
    // 35 L* over ln 12: 80 − 35/2 halfway.
    expect(valueAt(rising, Math.log(0.02 * Math.sqrt(12)))).toBeCloseTo(-62.5, 6);
    const { shades } = valueOf(read(doses.map((_, i) => 80 - 5 * i)));
    for (const [i, { lightness }] of shades.entries()) {
      // Speeds and powers are rounded, and steps of the strip with them.
      expect(Math.abs(lightness - (80 - (35 * i) / 3)), String(i)).toBeLessThan(0.7);
    }
    expect(shades[0]?.setting).toEqual(strip.settings[0]);
    expect(shades[3]?.setting).toEqual(strip.settings[7]);
  });

  it('turn one way, whatever was read; never beyond what was marked, nor what a mark may be', () => {
    fc.assert(
      fc.property(
        fc.array(fc.option(fc.double({ min: 0, max: 100, noNaN: true }), { nil: undefined }), {
          minLength: 8,
          maxLength: 8,
        }),
        fc.integer({ min: 2, max: 9 }),
        fc.constantFrom(...toneReadings),
        (lightness, count, by) => {
          const found = read(lightness, { count, by });
          if (!found.ok) {
            expect(found.problem.code).toMatch(/^tone-too-(?:few|flat)$/);
            return;
          }
          const { curve, shades } = found.value;
          expect(shades).toHaveLength(count);
          const strongest = Math.max(...doses) * (1 + 1e-6);
          for (const [i, { setting, lightness: tone, standardL }] of shades.entries()) {
            expect(markProblem(markOfStep(strip, setting), limits)).toBeUndefined();
            expect(doseOf(setting, { ...limits, linesOver: linesOver(0.1) })).toBeLessThanOrEqual(
              strongest,
            );
            expect(setting.speedMmPerS).toBeLessThanOrEqual(fastest);
            expect(standardL).toBeGreaterThan(0);
            const before = shades[i - 1]?.lightness ?? tone;
            expect(curve.turns * (tone - before)).toBeGreaterThanOrEqual(-1e-9);
          }
        },
      ),
    );
  });

  it('are never surer of rougher readings, nor of a scatter that no curve goes through', () => {
    const anyReads = fc.array(fc.double({ min: 0, max: 100, noNaN: true }), {
      minLength: 8,
      maxLength: 8,
    });
    fc.assert(
      fc.property(anyReads, (lightness) => {
        const reads = doses.map((dose, i) => ({ dose, lightness: lightness[i] ?? NaN }));
        const [fine, rough] = [toneCurve(reads, 1.5), toneCurve(reads, 4)];
        if (!fine.ok || !rough.ok) return;
        for (const [i, sure] of fine.value.standardL.entries()) {
          expect(rough.value.standardL[i]).toBeGreaterThanOrEqual(sure - 1e-9);
        }
      }),
    );
    const clean = valueOf(read([80, 75, 70, 65, 60, 55, 50, 45])).curve.standardL;
    const wild = valueOf(read([80, 75, 60, 75, 50, 65, 50, 45])).curve.standardL;
    for (const [i, sure] of clean.entries()) expect(wild[i]).toBeGreaterThan(sure);
  });

  it('may go from dark to pale, as on slate', () => {
    const { curve, shades } = valueOf(read([30, 34, 41, 50, 57, 63, 66, 68]));
    expect(curve.turns).toBe(1);
    const [first, last] = [shades[0], shades[3]];
    expect(Math.abs((first?.lightness ?? NaN) - 30)).toBeLessThan(3);
    expect(Math.abs((last?.lightness ?? NaN) - 68)).toBeLessThan(3);
  });

  it('are not told from three readings, nor where nothing changes', () => {
    expect(read([80, undefined, 60, undefined, undefined, 40])).toMatchObject({
      problem: { code: 'tone-too-few', params: { least: 4 } },
    });
    expect(read([60, 61, 60, 61, 60, 61, 60, 61])).toMatchObject({
      problem: { code: 'tone-too-flat' },
    });
  });
});

describe('even shades in simulation', () => {
  // Tones that fall along an S in ln dose, where and how steeply by chance; each reading off by a normal. Common practice, no
  // source. One reading of each step; and the mean of three of 1.5 L*, of which 0.7 is of the step itself.
  it.each([
    { offL: 1.5, leastNear: 0.85 },
    { offL: 1, leastNear: 0.95 },
  ])('lie within 2 L* of even mostly, and within what is said of them', ({ offL, leastNear }) => {
    let [all, near, held] = [0, 0, 0];
    for (let seed = 1; seed <= 300; seed += 1) {
      const random = seededRandom(seed);
      const between = (least: number, most: number) => least + (most - least) * random.uniform();
      const [light, dark] = [between(78, 88), between(20, 40)];
      const [low, high] = [doses[0] ?? NaN, doses.at(-1) ?? NaN];
      const middle = Math.log(low) + between(0.35, 0.65) * Math.log(high / low);
      const width = between(0.4, 0.9);
      const toneOf = (dose: number) =>
        dark + (light - dark) / (1 + Math.exp((Math.log(dose) - middle) / width));
      const { shades } = valueOf(
        read(
          doses.map((dose) => toneOf(dose) + offL * random.normal()),
          { count: 6 },
        ),
      );
      const tones = shades.map(({ setting }) =>
        toneOf(doseOf(setting, { ...limits, linesOver: linesOver(0.1) })),
      );
      const [first = NaN, last = NaN] = [tones[0], tones.at(-1)];
      for (const [i, tone] of tones.entries()) {
        // The ends are even by definition.
        if (i === 0 || i === tones.length - 1) continue;
        all += 1;
        if (Math.abs(tone - (first + ((last - first) * i) / 5)) <= 2) near += 1;
        const said = shades[i];
        if (said !== undefined && Math.abs(tone - said.lightness) <= 2 * said.standardL) held += 1;
      }
    }
    process.stdout.write(JSON.stringify({ offL, near: near / all, held: held / all }));
    expect(near / all).toBeGreaterThan(leastNear);
    expect(held / all).toBeGreaterThan(0.93);
  });
});
