import { describe, expect, it } from 'vitest';

import { seededRandom } from '../../num/seededRandom.ts';
import { findFocus } from './findFocus.ts';
import type { FocusEstimate, FocusReadings, UnkeptFocusTest } from './focusTest.ts';
import { lineWidthMm } from './lineWidthModel.ts';

/** The focus at a gap of 7.4 mm: 69 mm up this ramp. */
const ramp = { lengthMm: 120, blockMm: 8, nozzleGapMm: 12 };
const sine = 8 / 120;
const alongMm = (12 - 7.4) / sine;
const model = { focusMm: 4.6, rayleighMm: 1.1, widthMm: 0.16, q: 0 };

const widths = (
  noise: number,
  { count = 12, seed = 3, focusMm = 4.6, from = 3, to = 117 } = {},
): FocusReadings => {
  const random = seededRandom(seed);
  return {
    kind: 'widths',
    widths: Array.from({ length: count }, (_, i) => {
      const at = from + ((to - from) * i) / (count - 1);
      const width = lineWidthMm({ ...model, focusMm }, at * sine);
      return { alongMm: at, widthMm: width * Math.exp(noise * random.normal()) };
    }),
  };
};

const test = (readings: FocusReadings): UnkeptFocusTest => ({ ramp, readings });
const foundIn = (readings: FocusReadings): FocusEstimate => {
  const found = findFocus(test(readings));
  if (!found.ok) throw new Error(found.problem.code);
  return found.value;
};
const codeOf = (readings: FocusReadings): string => {
  const found = findFocus(test(readings));
  return found.ok ? 'found' : found.problem.code;
};

describe('the focus from widths', () => {
  it('comes back exactly from exact widths, with the depth', () => {
    const found = foundIn(widths(0));
    expect(found.gapMm.value).toBeCloseTo(7.4, 4);
    expect(found.alongMm.value).toBeCloseTo(alongMm, 3);
    expect(found.rayleighMm?.value).toBeCloseTo(1.1, 3);
    expect(found.remarks).toEqual([]);
  });

  it('lies within 0.1 mm at 5 % noise and twelve readings, in most tests, and in its interval', () => {
    const tests = Array.from({ length: 60 }, (_, i) => foundIn(widths(0.05, { seed: 50 + i })));
    const near = tests.filter(({ gapMm }) => Math.abs(gapMm.value - 7.4) <= 0.1).length;
    const held = tests.filter(({ gapMm }) => gapMm.low <= 7.4 && gapMm.high >= 7.4).length;
    expect(near).toBeGreaterThanOrEqual(52);
    expect(held).toBeGreaterThanOrEqual(52);
    expect(held).toBeLessThanOrEqual(60);
  });

  it('comes back where the dose shows, though the line is widest beside the focus', () => {
    const shown = { focusMm: 4.6, rayleighMm: 1.1, widthMm: 0.2, q: 0.3 };
    const found = foundIn({
      kind: 'widths',
      widths: Array.from({ length: 12 }, (_, i) => {
        const at = 10 + 9.4 * i;
        return { alongMm: at, widthMm: Math.max(0.02, lineWidthMm(shown, at * sine)) };
      }),
    });
    expect(found.gapMm.value).toBeCloseTo(7.4, 2);
  });

  it('does not mind the unit in which the widths were measured', () => {
    const given = widths(0.05);
    if (given.kind !== 'widths') throw new Error('widths were made');
    const inInches = given.widths.map(({ alongMm: at, widthMm }) => ({
      alongMm: at,
      widthMm: widthMm / 25.4,
    }));
    const there = foundIn(given);
    const here = foundIn({ kind: 'widths', widths: inInches });
    expect(here.gapMm.value).toBeCloseTo(there.gapMm.value, 6);
    expect(here.gapMm.low).toBeCloseTo(there.gapMm.low, 6);
  });

  it('is said to be missed where it lies beyond an end', () => {
    expect(codeOf(widths(0.03, { focusMm: 9.5 }))).toBe('focus-beyond-high-end');
    expect(codeOf(widths(0.03, { focusMm: -1.5 }))).toBe('focus-beyond-low-end');
    const near = foundIn(widths(0.05, { focusMm: 7.75 }));
    expect(near.remarks.map(({ code }) => code)).toContain('focus-near-high-end');
  });

  it('is not told by few widths, by level ones, or by such as lie off the strip', () => {
    expect(codeOf(widths(0.05, { count: 5 }))).toBe('focus-readings-too-few');
    expect(codeOf({ kind: 'widths', widths: [{ alongMm: 130, widthMm: 0.2 }] })).toBe(
      'focus-reading-off-strip',
    );
    const random = seededRandom(1);
    const level = Array.from({ length: 12 }, (_, i) => ({
      alongMm: 10 * i,
      widthMm: 0.3 * Math.exp(0.05 * random.normal()),
    }));
    expect(codeOf({ kind: 'widths', widths: level })).toBe('focus-widths-level');
  });
});

describe('the focus from fading ends', () => {
  const line = (half: number, off = 0, dose?: number) => ({
    fromMm: alongMm - half + off,
    toMm: alongMm + half + off,
    ...(dose === undefined ? {} : { dose }),
  });
  const fades = (lines: Extract<FocusReadings, { kind: 'fades' }>['lines']): FocusReadings => ({
    kind: 'fades',
    lines,
  });

  it('is the middle between the two ends', () => {
    const found = foundIn(fades([line(40), line(30), line(20)]));
    expect(found.gapMm.value).toBeCloseTo(7.4, 9);
    expect(found.alongMm.high - found.alongMm.low).toBeGreaterThan(0.5);
    expect(foundIn(fades([line(40)])).gapMm.value).toBeCloseTo(7.4, 9);
  });

  it('is surer with more lines, and less sure where they disagree', () => {
    const span = (readings: FocusReadings): number => {
      const { low, high } = foundIn(readings).gapMm;
      return high - low;
    };
    expect(span(fades([line(40), line(30), line(20)]))).toBeLessThan(span(fades([line(40)])));
    const apart = fades([line(40, 8), line(30, -8), line(20, 6)]);
    expect(span(apart)).toBeGreaterThan(span(fades([line(40), line(30), line(20)])));
    expect(foundIn(apart).remarks.map(({ code }) => code)).toContain('focus-lines-disagree');
  });

  it('tells the depth from lines of several doses: a line fades where 1 + (h/zR)² has grown with its dose squared', () => {
    const half = (dose: number): number => (1.1 * Math.sqrt((2.6 * dose) ** 2 - 1)) / sine;
    const found = foundIn(fades([1, 0.7, 0.45].map((dose) => line(half(dose), 0, dose))));
    expect(found.rayleighMm?.value).toBeCloseTo(1.1, 9);
    expect(foundIn(fades([line(40), line(30)])).rayleighMm).toBeNull();
  });

  it('is said to be missed where a line runs off an end', () => {
    expect(codeOf(fades([{ fromMm: 80, toMm: null }]))).toBe('focus-beyond-high-end');
    expect(codeOf(fades([{ fromMm: null, toMm: 30 }]))).toBe('focus-beyond-low-end');
    expect(codeOf(fades([{ fromMm: null, toMm: null }]))).toBe('focus-line-never-fades');
    expect(codeOf(fades([]))).toBe('focus-readings-too-few');
    expect(codeOf(fades([{ fromMm: 20, toMm: 140 }]))).toBe('focus-reading-off-strip');
    // One line that fades on both sides is enough.
    expect(codeOf(fades([{ fromMm: 20, toMm: null }, line(20)]))).toBe('found');
  });

  it('is not looked for on a ramp that may not be used', () => {
    const found = findFocus({ ramp: { ...ramp, blockMm: 11 }, readings: fades([line(20)]) });
    expect(found).toMatchObject({ ok: false, problem: { code: 'ramp-meets-nozzle' } });
  });
});
