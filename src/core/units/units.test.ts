import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Outcome } from '../problem.ts';
import { parseCurrent, showCurrent } from './current.ts';
import { lengthUnits, parseLength, showLength, type LengthUnit } from './length.ts';
import { parsePower, showPower } from './power.ts';
import { parsePressure, pressureUnits, showPressure, type PressureUnit } from './pressure.ts';
import { parseSpeed, showSpeed, speedUnits, type SpeedUnit } from './speed.ts';

const value = (outcome: Outcome<number>): number => {
  if (!outcome.ok) throw new Error(outcome.problem.code);
  return outcome.value;
};
const codeOf = (outcome: Outcome<number>) => (outcome.ok ? 'accepted' : outcome.problem.code);

// Inch and foot: international yard and pound agreement, 1959. psi and kgf/cm²: NIST SP 811 (2008), appendix B.
describe('quantities as people write them', () => {
  it.each([
    ['1/8 in', 3.175],
    ['1 1/8 in', 28.575],
    ['1-1/8"', 28.575],
    ['1⅛ in', 28.575],
    ['⅛"', 3.175],
    ['0.118"', 2.9972],
    ['.125in', 3.175],
    ['3.2mm', 3.2],
    ['3,1 mm', 3.1],
    ['0,125 mm', 0.125],
    ['1,200.5 mm', 1200.5],
    ['1.200,5 mm', 1200.5],
    ['3', 3],
    [' 3.0 MM ', 3],
    ['6 millimetres', 6],
    ['2 ft', 609.6],
    ['125 thou', 3.175],
    ['125 mil', 3.175],
    ['60 mils', 1.524],
    ['0.6 m', 600],
  ])('length %s is %d mm', (text, mm) => {
    expect(value(parseLength(text))).toBe(mm);
  });

  it.each([
    ['15 mm/s', 15],
    ['15', 15],
    ['600 in/min', 254],
    ['600 ipm', 254],
    ['1 inch per second', 25.4],
    ['1.2 m/min', 20],
    ['900 mm / min', 15],
    ['30 m/min', 500],
  ])('speed %s is %d mm/s', (text, mmPerS) => {
    expect(value(parseSpeed(text))).toBe(mmPerS);
  });

  it.each([
    ['100 kPa', 100],
    ['1.4 bar', 140],
    ['20 psi', 137.89514],
    ['0.1 MPa', 100],
    ['1 kgf/cm2', 98.0665],
  ])('pressure %s is %d kPa', (text, kPa) => {
    expect(value(parsePressure(text))).toBe(kPa);
  });

  it('reads power settings and currents', () => {
    expect([parsePower('30%'), parsePower('30'), parsePower('12,5 per cent')].map(value)).toEqual([
      30, 30, 12.5,
    ]);
    expect([parseCurrent('11 mA'), parseCurrent('0.011 A'), parseCurrent('11')].map(value)).toEqual(
      [11, 11, 11],
    );
  });

  it('takes a bare figure in the unit that the person prefers', () => {
    expect(value(parseLength('1/8', 'in'))).toBe(3.175);
    expect(value(parseSpeed('600', 'in/min'))).toBe(254);
    expect(value(parsePressure('1', 'psi'))).toBe(6.894757);
  });

  it.each([
    ['', 'quantity-empty'],
    ['   ', 'quantity-empty'],
    ['thick', 'quantity-not-a-number'],
    ['1/0 in', 'quantity-not-a-number'],
    ['3.1.2 mm', 'quantity-not-a-number'],
    ['-3 mm', 'quantity-negative'],
    ['−3 mm', 'quantity-negative'],
    ['1,200 mm', 'quantity-ambiguous'],
    ['3 psi', 'quantity-unit-unknown'],
    ['3 mm mm', 'quantity-unit-unknown'],
    ['1e3 mm', 'quantity-unit-unknown'],
    ['3 constructor', 'quantity-unit-unknown'],
  ])('refuses %j as a length: %s', (text, code) => {
    expect(codeOf(parseLength(text))).toBe(code);
  });

  it('refuses watts and more than everything as a power setting', () => {
    expect(codeOf(parsePower('60 W'))).toBe('quantity-unit-unknown');
    expect(codeOf(parsePower('101 %'))).toBe('power-setting-above-100');
  });
});

describe('quantities shown', () => {
  it('as a person reads them', () => {
    expect(showLength(3.175, 'in')).toBe('0.125\u202fin');
    expect(showLength(3.2)).toBe('3.2\u202fmm');
    expect(showSpeed(254, 'in/min')).toBe('600\u202fin/min');
    expect(showPressure(137.895, 'psi')).toBe('20\u202fpsi');
    expect(showPower(30)).toBe('30\u202f%');
    expect(showCurrent(11.04)).toBe('11\u202fmA');
  });

  /** Half of the last digit shown, in base units. */
  const within = (shown: string, factor: number): number => {
    const decimals = /\.(\d+)/.exec(shown)?.[1]?.length ?? 0;
    return factor * 0.5 * 10 ** -decimals;
  };
  const keys = <K extends string>(table: Readonly<Record<K, number>>): K[] => {
    const names: K[] = [];
    for (const name in table) names.push(name);
    return names;
  };
  const base = fc.double({ min: 0.5, max: 2000, noNaN: true });

  it('come back as what was shown, in every unit', () => {
    const lengths = fc.constantFrom<LengthUnit[]>(...keys(lengthUnits.factor));
    const speeds = fc.constantFrom<SpeedUnit[]>(...keys(speedUnits.factor));
    const pressures = fc.constantFrom<PressureUnit[]>(...keys(pressureUnits.factor));
    fc.assert(
      fc.property(base, lengths, speeds, pressures, (size, l, s, p) => {
        const pairs = [
          [showLength(size, l), parseLength(showLength(size, l)), lengthUnits.factor[l]],
          [showSpeed(size, s), parseSpeed(showSpeed(size, s)), speedUnits.factor[s]],
          [showPressure(size, p), parsePressure(showPressure(size, p)), pressureUnits.factor[p]],
        ] as const;
        for (const [shown, parsed, factor] of pairs)
          expect(Math.abs(value(parsed) - size)).toBeLessThanOrEqual(
            within(shown, factor) * (1 + 1e-9),
          );
        expect(showLength(value(parseLength(showLength(size, l))), l)).toBe(showLength(size, l));
        expect(showSpeed(value(parseSpeed(showSpeed(size, s))), s)).toBe(showSpeed(size, s));
        expect(showPressure(value(parsePressure(showPressure(size, p))), p)).toBe(
          showPressure(size, p),
        );
      }),
    );
  });

  it('mean the same with a comma as with a point, and with or without the gap', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 999 }),
        fc.integer({ min: 0, max: 99 }),
        (whole, part) => {
          const point = `${String(whole)}.${String(part)}`;
          const mm = value(parseLength(`${point} mm`));
          expect(value(parseLength(`${point.replace('.', ',')}mm`))).toBe(mm);
          expect(value(parseLength(`${point}"`))).toBeCloseTo(mm * 25.4, 6);
        },
      ),
    );
  });

  it('answer any text with a figure that is finite and not below nought, or a problem', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.stringMatching(/^[0-9.,/ -]{1,9} ?(mm|in|")?$/)),
        (text) => {
          const parsed = parseLength(text);
          if (parsed.ok) expect(parsed.value).toBeGreaterThanOrEqual(0);
          if (parsed.ok) expect(Number.isFinite(parsed.value)).toBe(true);
        },
      ),
    );
  });
});
