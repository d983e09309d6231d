import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { tQuantile } from '../../num/distributions.ts';
import type { TubePoint } from '../machine/machine.ts';
import { currentAt, meterCurve, settingAt, type MeterCurve } from './meterCurve.ts';

type Pair = readonly [powerPct: number, currentMa: number];

const readingsOf = (pairs: readonly Pair[]): readonly TubePoint[] =>
  pairs.map(([powerPct, currentMa]) => ({ powerPct, currentMa }));

const curveOf = (pairs: readonly Pair[]): MeterCurve => {
  const made = meterCurve(readingsOf(pairs));
  if (!made.ok) throw new Error(made.problem.code);
  return made.value;
};

/** A tube rated 19 mA reached it at about 65 % setting; 7.6 mA is 40 % of its rating. Common practice, no source. */
const tradeTube: readonly Pair[] = [
  [8, 0],
  [10, 3.1],
  [10, 3.2],
  [20, 5.9],
  [20, 5.8],
  [30, 8.7],
  [30, 8.8],
  [45, 13.2],
  [45, 13.1],
  [55, 16.1],
  [55, 16.2],
  [65, 19],
  [65, 19],
  [68, 19.8],
];

const valueOf = (outcome: ReturnType<typeof currentAt>) => {
  if (!outcome.ok) throw new Error(outcome.problem.code);
  return outcome.value;
};
const codeOf = (outcome: ReturnType<typeof currentAt>): string =>
  outcome.ok ? 'said' : outcome.problem.code;

describe('the curve of a metering', () => {
  it('goes both ways between setting, current and share of rated (trade fact: 19 mA at 65 %)', () => {
    const curve = curveOf(tradeTube);
    const rated = valueOf(settingAt(curve, 19));
    expect(rated.value).toBeCloseTo(65, 9);
    expect(rated.low).toBeGreaterThan(63.5);
    expect(rated.high).toBeLessThan(66.5);
    const twoFifths = valueOf(settingAt(curve, 0.4 * 19));
    expect(twoFifths.value).toBeGreaterThan(24);
    expect(twoFifths.value).toBeLessThan(28);
    expect(valueOf(currentAt(curve, twoFifths.value)).value).toBeCloseTo(7.6, 9);
  });

  it('has at a setting the band that Student would give its mean', () => {
    // Two readings at each of six settings, ±0.1 mA about a straight line: s = 0.1·√2 with 6 degrees of freedom.
    const pairs = [10, 20, 30, 40, 50, 60].flatMap((powerPct): readonly Pair[] => [
      [powerPct, 0.3 * powerPct + 0.1],
      [powerPct, 0.3 * powerPct - 0.1],
    ]);
    const curve = curveOf(pairs);
    expect(curve.noise).toMatchObject({ degrees: 6, from: 'repeats', atMa: 10.5 });
    const { value, low, high } = valueOf(currentAt(curve, 30));
    const { sdMa, atMa } = curve.noise;
    const sd = (sdMa * Math.sqrt((1 + 2 * (9 / atMa) ** 2) / 3)) / Math.SQRT2;
    expect(value).toBeCloseTo(9, 9);
    expect(high).not.toBeNull();
    expect(((high ?? NaN) - low) / 2 / (tQuantile(0.975, 6) * sd)).toBeCloseTo(1, 1);
  });

  it('refuses what no reading bears out, with the reason', () => {
    const curve = curveOf(tradeTube);
    expect(codeOf(currentAt(curve, 70))).toBe('meter-beyond-readings');
    expect(codeOf(currentAt(curve, -1))).toBe('meter-beyond-readings');
    expect(codeOf(currentAt(curve, 9))).toBe('meter-between-dark-and-lit');
    expect(valueOf(currentAt(curve, 8))).toEqual({ value: 0, low: 0, high: 0 });
    expect(codeOf(settingAt(curve, 20))).toBe('meter-current-not-reached');
    expect(codeOf(settingAt(curve, 2))).toBe('meter-current-below-firing');
    expect(codeOf(settingAt(curve, NaN))).toBe('meter-current-not-reached');
    const neverDark = curveOf([
      [20, 6],
      [40, 12],
    ]);
    expect(codeOf(currentAt(neverDark, 10))).toBe('meter-beyond-readings');
  });

  it('says that nobody knows how far above the readings a current might be reached', () => {
    const curve = curveOf(tradeTube.slice(0, -1));
    expect(valueOf(settingAt(curve, 19)).high).toBeNull();
  });

  it('refuses readings that make no curve', () => {
    const refusal = (pairs: readonly Pair[]): string => {
      const made = meterCurve(readingsOf(pairs));
      return made.ok ? 'made' : made.problem.code;
    };
    expect(refusal([])).toBe('tube-readings-too-few');
    expect(refusal([[30, 8]])).toBe('tube-readings-too-few');
    expect(
      refusal([
        [5, 0],
        [30, 8],
      ]),
    ).toBe('tube-readings-too-few');
    expect(
      refusal([
        [5, 0],
        [30, 0],
      ]),
    ).toBe('tube-never-fired');
    expect(
      refusal([
        [30, 8],
        [130, 9],
      ]),
    ).toBe('tube-reading-impossible');
    expect(
      refusal([
        [30, 8],
        [40, -1],
      ]),
    ).toBe('tube-reading-impossible');
  });

  it('leaves settings out where it flickered: they bound the threshold and bend nothing', () => {
    const curve = curveOf([
      [8, 0],
      [9, 2.9],
      [9, 0],
      [10, 3],
      [20, 6],
      [30, 9],
    ]);
    expect(curve.firing).toEqual({ darkAtPct: 9, firesAtPct: 10 });
    expect(curve.between.x).toEqual([10, 20, 30]);
  });

  it('says the same twice, and does not mind the order of the readings', () => {
    const there = valueOf(currentAt(curveOf(tradeTube), 33));
    expect(valueOf(currentAt(curveOf(tradeTube), 33))).toEqual(there);
    const back = valueOf(currentAt(curveOf(tradeTube.toReversed()), 33));
    expect(back.value).toBeCloseTo(there.value, 12);
  });

  it('never falls, holds its value in its band, and inverts itself, for any readings', () => {
    const pair = fc.tuple(
      fc.integer({ min: 5, max: 95 }),
      fc.double({ min: 0.5, max: 30, noNaN: true }),
    );
    fc.assert(
      fc.property(
        fc.array(pair, { minLength: 4, maxLength: 12 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (pairs, share) => {
          fc.pre(new Set(pairs.map(([powerPct]) => powerPct)).size >= 2);
          const curve = curveOf(pairs);
          const [first = NaN, last = NaN] = [curve.between.x[0], curve.between.x.at(-1)];
          const powerPct = Math.min(last, first + share * (last - first));
          const drawn = valueOf(currentAt(curve, powerPct));
          expect(drawn.low).toBeLessThanOrEqual(drawn.high ?? Infinity);
          expect(valueOf(currentAt(curve, last)).value).toBeGreaterThanOrEqual(drawn.value);
          const back = settingAt(curve, drawn.value * (1 + 1e-12));
          if (back.ok)
            expect(valueOf(currentAt(curve, back.value.value)).value).toBeCloseTo(drawn.value, 8);
        },
      ),
      { numRuns: 60 },
    );
  });
});
