import { describe, expect, it } from 'vitest';
import { readSettingLines } from './lines.ts';

const read = (text: string) => {
  const outcome = readSettingLines(text);
  return outcome.ok ? outcome.value : outcome.problem.code;
};

describe('settings one a line', () => {
  it('are a speed and a power, units or not', () => {
    const expected = [{ speedMmPerS: 14, powerPct: 30, passes: 1 }];
    for (const line of ['14 30', '14 mm/s 30 %', '14mm/s, 30%', '14 mm/s at 30 %', ' 14, 30 \n\n'])
      expect(read(line)).toEqual(expected);
  });

  it('may have passes and odd steps', () => {
    expect(read('11.3 27.5\n5 30 x2')).toEqual([
      { speedMmPerS: 11.3, powerPct: 27.5, passes: 1 },
      { speedMmPerS: 5, powerPct: 30, passes: 2 },
    ]);
  });

  it('are refused where they are none', () => {
    expect(read('fast')).toBe('line-not-a-setting');
    expect(read('14')).toBe('line-not-a-setting');
    expect(read('14 130')).toBe('line-not-a-setting');
  });
});
