import { done, refused, type Outcome } from '../problem.ts';
import { parseNumber } from './parseNumber.ts';

/** Spellings of hours, minutes and seconds, the longest first. */
const unitSeconds: readonly (readonly [RegExp, number])[] = [
  [/^(?:hours?|hrs?|h)(?![a-z])/, 3600],
  [/^(?:minutes?|mins?|min|m|')(?![a-z])/, 60],
  [/^(?:seconds?|secs?|sec|s|″|")(?![a-z])/, 1],
];
const known = 'h, min, s';

/**
 * A time as a display or a person writes it ("4:10", "1:04:10", "4 min 10 s", "4m10s", "250"), in s. A bare figure is
 * seconds.
 */
export const parseDuration = (text: string): Outcome<number> => {
  const clock = /^\s*(?:(\d+):)?(\d+):([0-5]\d(?:[.,]\d+)?)\s*$/.exec(text);
  if (clock !== null) {
    const [, hours = '0', minutes = '0', seconds = '0'] = clock;
    return done(3600 * Number(hours) + 60 * Number(minutes) + Number(seconds.replace(',', '.')));
  }
  return parts(text, text.toLowerCase(), 0, Infinity);
};

/** Figure and unit by figure and unit, each unit smaller than the one before. */
const parts = (whole: string, text: string, soFar: number, above: number): Outcome<number> => {
  const figure = parseNumber(text, 'duration');
  if (!figure.ok) return figure;
  const rest = figure.value.rest.trim();
  const [spelling, each] = unitSeconds.find(([way]) => way.test(rest)) ?? [];
  if (rest === '' && above === Infinity) return done(figure.value.value);
  if (spelling === undefined || each === undefined || each >= above) {
    return refused('quantity-unit-unknown', { text: whole, kind: 'duration', unit: rest, known });
  }
  const seconds = soFar + figure.value.value * each;
  const left = rest.replace(spelling, '').trim();
  return left === '' ? done(seconds) : parts(whole, left, seconds, each);
};
