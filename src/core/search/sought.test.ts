import { describe, expect, it } from 'vitest';
import { foundBy, soughtIn, thicknessesAbout } from './sought.ts';

describe('what a search asks for', () => {
  it('takes thicknesses by their unit, and all else as words', () => {
    expect(soughtIn('5,25 mm Plywood 3mm spring')).toEqual({
      words: ['plywood', 'spring'],
      thicknessesMm: [5.25, 3],
    });
    expect(soughtIn('  ')).toEqual({ words: [], thicknessesMm: [] });
    expect(soughtIn('3 mmx')).toEqual({ words: ['3', 'mmx'], thicknessesMm: [] });
  });

  it('minds neither case nor accents', () => {
    expect(soughtIn('CONTREPLAQUÉ').words).toEqual(['contreplaque']);
    expect(foundBy(['Contreplaqué', undefined, 'X3MQ'])).toBe('contreplaque x3mq');
  });

  it('takes a thickness for another within 2 %', () => {
    const [least, most] = thicknessesAbout(5);
    expect(least).toBeCloseTo(4.9);
    expect(most).toBeCloseTo(5.1);
  });
});
