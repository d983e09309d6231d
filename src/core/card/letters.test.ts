import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { boxAround } from '../path/box.ts';
import { cellWords } from './settingWords.ts';
import { canBeWritten, textWidthMm, writeText } from './letters.ts';

const everything = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789.%/-+ mm/s';

describe('single-stroke letters', () => {
  it('are there for all that a card writes', () => {
    expect(canBeWritten(everything)).toBe(true);
    expect(
      canBeWritten(
        cellWords({ powerPct: 30, minPowerPct: 1, speedMmPerS: 4.2, passes: 2, air: 'off' }),
      ),
    ).toBe(true);
    expect(canBeWritten('σ')).toBe(false);
  });

  it('have capitals of the height asked for, standing on the base line (A. V. Hershey’s table: 21 units)', () => {
    for (const letter of 'ABDEFHIKLMNPRTXZ0123456789') {
      const box = boxAround(writeText(letter, [5, 7], { capMm: 3 }));
      expect(box?.bottomMm).toBeCloseTo(7, 9);
      expect(box?.topMm).toBeCloseTo(10, 9);
    }
  });

  it('differ from each other, each one of all', () => {
    const drawn = [...new Set(everything.replaceAll(' ', ''))].map((sign) =>
      JSON.stringify(writeText(sign, [0, 0], { capMm: 2 })),
    );
    expect(new Set(drawn).size).toBe(drawn.length);
  });

  it('keep within the width that was reckoned, whatever the height', () => {
    const text = fc.string({
      unit: fc.constantFrom(...Array.from(everything)),
      minLength: 1,
      maxLength: 20,
    });
    const cap = fc.double({ min: 1, max: 10, noNaN: true });
    fc.assert(
      fc.property(text, cap, (words, capMm) => {
        const lettering = { capMm, narrow: 0.8 };
        const width = textWidthMm(words, lettering);
        expect(width).toBeCloseTo(capMm * textWidthMm(words, { capMm: 1, narrow: 0.8 }), 8);
        const box = boxAround(writeText(words, [0, 0], lettering));
        if (box === undefined) return;
        expect(box.leftMm).toBeGreaterThanOrEqual(0);
        expect(box.rightMm).toBeLessThanOrEqual(width + 1e-9);
      }),
    );
  });
});
