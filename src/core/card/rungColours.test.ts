import { differenceCiede2000 } from 'culori';
import { describe, expect, it } from 'vitest';

import { marksColour, rungColours, trustedColour } from './rungColours.ts';

const difference = differenceCiede2000();

describe('the colours of the rungs', () => {
  it('are well apart for six rungs and still apart for twenty (CIEDE2000; about 2.3 is just noticed, from memory)', () => {
    for (const [count, least] of [
      [6, 18],
      [12, 12],
      [20, 10],
    ] as const) {
      const all = [...rungColours(count), marksColour, trustedColour];
      all.forEach((a, i) => {
        for (const b of all.slice(i + 1)) expect(difference(a, b)).toBeGreaterThan(least);
      });
    }
  });

  it('can be seen on white paper and are written as six hexadecimal digits', () => {
    for (const colour of rungColours(20)) {
      expect(colour).toMatch(/^#[0-9a-f]{6}$/);
      expect(difference(colour, '#ffffff')).toBeGreaterThan(25);
    }
  });

  it('do not change when a rung is added', () => {
    expect(rungColours(7).slice(0, 6)).toEqual(rungColours(6));
  });
});
