import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { parseTemperature, showTemperature } from './temperature.ts';

const read = (text: string, unit?: '°C' | '°F'): number | string => {
  const parsed = parseTemperature(text, unit);
  return parsed.ok ? parsed.value : parsed.problem.code;
};

describe('temperatures', () => {
  it('are read as people write them', () => {
    expect(
      ['19', '19 °C', '19,5 C', '19 degrees C', '19 deg', '68 °F', '212F'].map((t) => read(t)),
    ).toEqual([19, 19, 19.5, 19, 19, 20, 100]);
    expect(read('68', '°F')).toBe(20);
  });

  it('are refused where they are none', () => {
    expect(['', 'warm', '-3', '20 K', '293 constructor'].map((text) => read(text))).toEqual([
      'quantity-empty',
      'quantity-not-a-number',
      'quantity-negative',
      'quantity-unit-unknown',
      'quantity-unit-unknown',
    ]);
  });

  it('are shown in the unit that is preferred, and read back', () => {
    expect(showTemperature(20)).toBe('20\u202f°C');
    expect(showTemperature(20, '°F')).toBe('68\u202f°F');
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 900 }), fc.constantFrom('°C', '°F'), (tenths, unit) => {
        const back = read(showTemperature(tenths / 10, unit), unit);
        expect(back).toBeCloseTo(tenths / 10, 0);
      }),
    );
  });
});
