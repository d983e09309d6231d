import { afterEach, describe, expect, it } from 'vitest';
import { inchUnits, metricUnits, unitChoices } from '../../../core/units/unitPreference.ts';
import { showUnits } from './figures.ts';
import { inUnitsShown } from './inUnits.ts';

afterEach(() => showUnits(metricUnits));

describe('a sentence in the units of the page', () => {
  it('stays as it is in mm and mm/s', () => {
    expect(inUnitsShown('At 14 mm/s and 3 mm.')).toBe('At 14 mm/s and 3 mm.');
  });

  // 1 in is 25.4 mm exactly: NIST SP 811 (2008), appendix B. 12.7 mm/s are 30 in/min.
  it('says speeds and lengths in inches, lists of them too', () => {
    showUnits(inchUnits);
    expect(inUnitsShown('Cut at 12.7 mm/s, 34 %.')).toBe('Cut at 30\u202fin/min, 34 %.');
    expect(inUnitsShown('at 12.7, 25.4 and 38.1\u202fmm/s')).toBe('at 30, 60 and 90\u202fin/min');
    expect(inUnitsShown('a bed of 254 × 127 mm.')).toBe('a bed of 10 × 5\u202fin.');
    expect(inUnitsShown('from 25.4 to 50.8 mm')).toBe('from 1 to 2\u202fin');
  });

  it('says speeds by the minute and leaves lengths', () => {
    showUnits(unitChoices['mm/min']);
    expect(inUnitsShown('14 mm/s on 3.2 mm')).toBe('840\u202fmm/min on 3.2 mm');
  });

  it('leaves what is none, or only the name of a unit', () => {
    showUnits(inchUnits);
    for (const text of [
      'mm/s or mm/min?',
      '800 mm/s²',
      '2 passes, then 3 minutes',
      'cell A2 mm',
      '40 mm/min',
    ])
      expect(inUnitsShown(text)).toBe(text);
  });
});
