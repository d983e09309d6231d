import { describe, expect, it } from 'vitest';
import { allSheets, firstCard, sayings, tubesW } from './straddles.ts';
import { straddleShare } from './strengthBench.ts';

describe('the first card', () => {
  it.each(sayings.flatMap((said) => tubesW.map((tubeW) => [tubeW, said] as const)))(
    'of a %i W tube straddles the changeover nine times in ten where %s was said',
    (tubeW, said) => {
      const sheets = allSheets.filter((sheet) => sheet.tubeW === tubeW);
      expect(straddleShare(sheets, said, 20)).toBeGreaterThanOrEqual(0.9);
    },
  );

  it('differs between a weak and a strong machine, and reaches over both where nobody said which', () => {
    const speeds = (tubeW: number, said: (typeof sayings)[number]) =>
      firstCard({ material: 'plywood', thicknessMm: 3, tubeW }, said)?.speedsMmPerS ?? [];
    // 40 W at 30 % cuts 3 mm plywood at 3 to 4 mm/s; from memory, common practice.
    expect(Math.min(...speeds(40, 'watts'))).toBeLessThan(3);
    expect(Math.max(...speeds(40, 'watts'))).toBeGreaterThan(4);
    expect(Math.min(...speeds(130, 'watts'))).toBeGreaterThan(4);
    expect(Math.min(...speeds(40, 'nothing'))).toBeLessThan(3);
    expect(Math.max(...speeds(130, 'nothing'))).toBeGreaterThan(20);
  });

  it('offers 10 mm of plywood on 80 W at 30 % some 1 mm/s, whatever was said', () => {
    for (const said of sayings) {
      const sheet = { material: 'plywood', thicknessMm: 10, tubeW: 80, powerPct: 30 };
      expect(Math.min(...(firstCard(sheet, said)?.speedsMmPerS ?? []))).toBeLessThanOrEqual(1.1);
    }
  });
});
