import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { assumedNoise, meterNoise, pseudoResiduals, sdAt, sdOfMean } from './meterNoise.ts';
import { meterSettings } from './meterSettings.ts';

const settingsOf = (pairs: readonly (readonly [number, number])[]) =>
  meterSettings(pairs.map(([powerPct, currentMa]) => ({ powerPct, currentMa })));

describe('the scatter of the meter', () => {
  it('is pooled over the repeats', () => {
    // At the mean current the growth is 1: two pairs 0.2 mA apart about 10 mA, s² = (0.02 + 0.02)/2 (textbook pooling).
    const noise = meterNoise(
      settingsOf([
        [30, 9.9],
        [30, 10.1],
        [31, 9.9],
        [31, 10.1],
        [32, 9.9],
        [32, 10.1],
      ]),
    );
    expect(noise).toMatchObject({ degrees: 3, from: 'repeats' });
    expect(noise.sdMa).toBeCloseTo(Math.sqrt(0.02), 12);
    expect(sdAt(noise, 10)).toBeCloseTo(Math.sqrt(0.02), 12);
    expect(sdAt(noise, 20)).toBeCloseTo(Math.sqrt(0.02 * 3), 12);
  });

  it('is taken from the neighbours where there are too few repeats, and is nothing on a line', () => {
    const straight = settingsOf([10, 20, 30, 40, 50].map((pct) => [pct, pct / 3]));
    expect(meterNoise(straight).from).toBe('neighbours');
    expect(meterNoise(straight).sdMa).toBeCloseTo(0, 12);
    const [middle] = pseudoResiduals(
      settingsOf([
        [10, 3],
        [20, 6.3],
        [30, 9],
      ]),
    );
    // Even steps: (½, −1, ½), so the variance is 1.5 that of a reading.
    expect(middle?.perReading).toBeCloseTo(Math.sqrt(1.5), 12);
    expect(middle?.ma).toBeCloseTo(0.3, 12);
  });

  it('is assumed where nothing tells it', () => {
    expect(
      meterNoise(
        settingsOf([
          [10, 3],
          [20, 6],
        ]),
      ),
    ).toMatchObject(assumedNoise);
  });

  it('is never believed to be finer than the scale', () => {
    const settings = settingsOf(
      [10, 20, 30, 40].flatMap((pct) => [
        [pct, pct / 5 + 0.5],
        [pct, pct / 5 + 0.5],
      ]),
    );
    const noise = meterNoise(settings);
    expect(noise).toMatchObject({ sdMa: 0, readToMa: 0.5 });
    const [first] = settings;
    if (first === undefined) throw new Error('there are settings');
    expect(sdOfMean(noise, first)).toBeCloseTo(0.5 / Math.sqrt(12), 12);
  });

  it('does not mind in which unit the setting is counted, and doubles with the readings', () => {
    const pairs = fc.array(
      fc.tuple(
        fc.integer({ min: 1, max: 49 }),
        fc.double({ min: 1, max: 20, noNaN: true }),
        fc.double({ min: 1, max: 20, noNaN: true }),
      ),
      { minLength: 4, maxLength: 8 },
    );
    fc.assert(
      fc.property(pairs, (rows) => {
        const both = rows.flatMap(([pct, a, b]): [number, number][] => [
          [pct, a],
          [pct, b],
        ]);
        const noise = meterNoise(settingsOf(both));
        const twice = meterNoise(settingsOf(both.map(([pct, ma]) => [2 * pct, 2 * ma])));
        expect(twice.sdMa).toBeCloseTo(2 * noise.sdMa, 9);
        expect(twice.degrees).toBe(noise.degrees);
      }),
    );
  });
});
