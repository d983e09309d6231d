import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { durationWords } from '../../words/texts.ts';
import { parseAcceleration, showAcceleration } from './acceleration.ts';
import { parseDuration } from './duration.ts';

describe('a time as people write it', () => {
  // Common practice, no source: displays count in minutes and seconds, stopwatches in seconds.
  it.each([
    ['250', 250],
    ['250 s', 250],
    ['38,4', 38.4],
    ['4:10', 250],
    ['04:10', 250],
    ['1:04:10', 3850],
    ['4 min 10 s', 250],
    ['4m10s', 250],
    ['4 minutes', 240],
    ['1 h 5 min', 3900],
    ['½ min', 30],
  ])('%s is %d s', (text, seconds) => {
    expect(parseDuration(text)).toEqual({ ok: true, value: seconds });
  });

  it.each([
    ['', 'quantity-empty'],
    ['soon', 'quantity-not-a-number'],
    ['-5', 'quantity-negative'],
    ['4:75', 'quantity-unit-unknown'],
    ['4 min 10', 'quantity-unit-unknown'],
    ['10 s 4 min', 'quantity-unit-unknown'],
    ['4 mm', 'quantity-unit-unknown'],
  ])('“%s” is refused: %s', (text, code) => {
    const outcome = parseDuration(text);
    expect(outcome.ok ? 'taken' : outcome.problem.code).toBe(code);
  });

  it('reads back what is shown, to the second, or to the minute beyond an hour', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 90_000 }), (seconds) => {
        const read = parseDuration(durationWords(seconds));
        expect(read.ok && Math.abs(read.value - seconds)).toBeLessThan(seconds < 3600 ? 0.5 : 60);
      }),
    );
  });
});

describe('an acceleration as people write it', () => {
  // g: NIST SP 811 (2008), appendix B.
  it.each([
    ['800', 800],
    ['0.8 m/s2', 800],
    ['800 mm/s^2', 800],
    ['1 g', 9806.65],
    ['2880000 mm/min²', 800],
  ])('%s is %d mm/s²', (text, mmPerS2) => {
    expect(parseAcceleration(text)).toEqual({ ok: true, value: mmPerS2 });
  });

  it('is shown to three digits', () => {
    expect(showAcceleration(1234.5)).toBe('1230\u202fmm/s²');
  });
});
