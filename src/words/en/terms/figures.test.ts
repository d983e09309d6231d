import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { counted, durationWords, inHundred, listed, speedWords, sureWords } from './figures.ts';

describe('figures in sentences', () => {
  it('carry their unit and no more digits than they have', () => {
    expect(speedWords(17)).toBe('17\u202fmm/s');
    expect(speedWords(16.8)).toBe('16.8\u202fmm/s');
    expect(durationWords(3.46)).toBe('3.5\u202fs');
    expect(durationWords(250)).toBe('4\u202fmin 10\u202fs');
    expect(durationWords(3900)).toBe('1\u202fh 5\u202fmin');
    expect(durationWords(59.7)).toBe('1\u202fmin');
    expect(durationWords(119.7)).toBe('2\u202fmin');
    expect(counted(1, 'cell')).toBe('1 cell');
    expect(listed(['A', 'B', 'C'])).toBe('A, B and C');
  });

  it('keep the three promises apart', () => {
    expect([97, 99, 99.65].map(inHundred)).toEqual(['97', '99', '99.65']);
  });

  it('never say that all come out, nor that we are wholly sure', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 100, noNaN: true }), (value) => {
        expect(inHundred(value)).not.toBe('100');
        expect(sureWords(value)).not.toMatch(/^100/);
      }),
    );
  });
});
