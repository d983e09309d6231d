import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { labelTolerance } from './labelTolerance.ts';
import { stockThicknessMm } from './stockThickness.ts';
import { summariseThickness } from './thickness.ts';

const stock = (
  nominalThicknessMm: number,
  thicknessReadingsMm: readonly number[],
  material = 'plywood',
) => ({
  material,
  nominalThicknessMm,
  thicknessReadingsMm,
});
const codes = (nominal: number, readings: readonly number[], material?: string) =>
  summariseThickness(stock(nominal, readings, material))?.remarks.map(({ code }) => code);

describe('the thickness of a sheet', () => {
  it('has mean and spread', () => {
    // 2, 4, 4, 4, 5, 5, 7, 9: mean 5, sum of squares 32 (the usual textbook example; common practice, no source).
    const summary = summariseThickness(stock(5, [2, 4, 4, 4, 5, 5, 7, 9]));
    expect(summary?.meanMm).toBe(5);
    expect(summary?.sdMm).toBeCloseTo(Math.sqrt(32 / 7), 12);
    expect([summary?.leastMm, summary?.mostMm, summary?.count]).toEqual([2, 9, 8]);
  });

  it('of one reading is as sure as the caliper: a rectangle of ±0.03 mm', () => {
    // JCGM 100:2008: u = a/√3; 1.96·0.03/√3 = 0.0339
    expect(summariseThickness(stock(3, [3.01]))?.uncertaintyMm).toBeCloseTo(0.0339, 4);
  });

  it('of readings that all but agree is as sure as the caliper, never surer', () => {
    // 1.96·0.03/√3, as for one reading: a spread of micrometres adds nothing.
    expect(summariseThickness(stock(4, [3.999997, 3.999994]))?.uncertaintyMm).toBeCloseTo(
      0.0339,
      4,
    );
  });

  it('says that the label lies when it is off by more than its uncertainty and 3 %', () => {
    expect(codes(3, [3.21, 3.2, 3.22, 3.21])).toEqual(['label-lies']);
    expect(codes(3, [3.05, 3.06, 3.04])).toEqual([]);
    expect(codes(3, [2.6, 3.8])).toEqual(['thickness-readings-disagree']); // off, but nobody can say by how much
    expect(codes(3, [3.01])).toEqual(['thickness-one-reading']);
    expect(codes(3, [])).toBeUndefined();
  });

  it('says when a sheet sold as 6 mm measures about 5.25 mm, which no plywood standard allows', () => {
    const remark = summariseThickness(stock(6, [5.2, 5.25, 5.3, 5.25]))?.remarks[0];
    expect(remark?.code).toBe('label-beyond-standard');
    expect(remark?.params).toMatchObject({
      meanMm: 5.25,
      nominalMm: 6,
      leastMm: 5.42,
      mostMm: 6.38,
    });
    expect(codes(6, [5.2, 5.25, 5.3, 5.25], 'acrylic')).toEqual(['label-lies']);
  });

  // Examples as printed beside the formulas: ISO 7823-1 as quoted on two public pages; EN 315 from memory.
  it.each([
    ['acrylic', 3, 2.3, 3.7],
    ['acrylic', 10, 8.6, 11.4],
    ['plywood', 3, 2.51, 3.29],
    ['plywood', 9, 8.33, 9.47],
    ['MDF', 6, 5.8, 6.2],
  ])('%s of %d mm may measure %d to %d mm', (material, nominal, least, most) => {
    const allowed = labelTolerance(material, nominal);
    expect(allowed?.leastMm).toBeCloseTo(least, 9);
    expect(allowed?.mostMm).toBeCloseTo(most, 9);
  });

  it('does not depend on the order of the readings, and scales with them', () => {
    const readings = fc.array(fc.double({ min: 2, max: 8, noNaN: true }), {
      minLength: 2,
      maxLength: 12,
    });
    fc.assert(
      fc.property(readings, (drawn) => {
        const one = summariseThickness(stock(4, drawn));
        const other = summariseThickness(stock(4, drawn.toReversed()));
        expect(other?.meanMm).toBeCloseTo(one?.meanMm ?? NaN, 10);
        expect(other?.uncertaintyMm).toBeCloseTo(one?.uncertaintyMm ?? NaN, 10);
        expect(stockThicknessMm(stock(4, drawn))).toBeCloseTo(one?.meanMm ?? NaN, 10);
        expect(one?.uncertaintyMm).toBeGreaterThan(0);
      }),
    );
  });
});
