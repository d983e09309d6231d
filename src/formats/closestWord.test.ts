import { describe, expect, it } from 'vitest';
import { closestWord } from './closestWord.ts';

describe('the word that was meant', () => {
  const known = ['powerPct', 'speedMmPerS', 'out', 'hangs'];
  it.each([
    ['PowerPCT', 'powerPct'],
    ['speed', 'speedMmPerS'],
    ['powrPct', 'powerPct'],
    ['hang', 'hangs'],
    ['o', undefined],
    ['banana', undefined],
  ])('for %s is %s', (typed, meant) => {
    expect(closestWord(typed, known)).toBe(meant);
  });
});
