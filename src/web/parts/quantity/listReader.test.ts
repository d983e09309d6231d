import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readList } from './listReader.ts';
import { parseSpeed } from '../../../core/units/speed.ts';

const speeds = (text: string) => {
  const read = readList((each) => parseSpeed(each))(text);
  return read.ok ? read.value : read.problem.code;
};

describe('a list of quantities as people write it', () => {
  it('is parted by commas, semicolons or blanks', () => {
    expect(speeds('10, 15, 20')).toEqual([10, 15, 20]);
    expect(speeds('10 12.5 15 mm/s')).toEqual([10, 12.5, 15]);
    expect(speeds('10;11')).toEqual([10, 11]);
    expect(speeds('10,15,20')).toEqual([10, 15, 20]);
    expect(speeds('14')).toEqual([14]);
    expect(speeds('')).toEqual([]);
  });

  it('may be said by its first, last and step', () => {
    expect(speeds('10 to 30 by 5 mm/s')).toEqual([10, 15, 20, 25, 30]);
    expect(speeds('10-11 by 0.5')).toEqual([10, 10.5, 11]);
  });

  it('takes a comma for a decimal point only where it can be nothing else', () => {
    expect(speeds('10,5 12,5')).toEqual([10.5, 12.5]);
    expect(speeds('10,5; 12; 13,5 mm/s')).toEqual([10.5, 12, 13.5]);
    expect(speeds('3,1, 3,15, 3,05')).toEqual([3.1, 3.15, 3.05]);
    expect(speeds('3,1')).toBe('list-comma-unclear');
    expect(speeds('10, 12,5, 15')).toBe('list-comma-unclear');
    expect(speeds('10, 12, 14,')).toEqual([10, 12, 14]);
  });

  it('says of words without a figure that they are none', () => {
    expect(speeds('abc')).toBe('quantity-not-a-number');
    expect(speeds('  ')).toEqual([]);
  });

  it('reads any figures back as they were written with a point, however they are parted', () => {
    const tenths = fc.integer({ min: 1, max: 9999 }).map((n) => n / 10);
    fc.assert(
      fc.property(
        fc.array(tenths, { minLength: 1, maxLength: 12 }),
        fc.constantFrom(' ', ', ', '; '),
        (figures, gap) => {
          expect(speeds(figures.join(gap))).toEqual(figures);
        },
      ),
    );
  });

  it('takes one unit for all', () => {
    expect(speeds('600, 900 mm/min')).toEqual([10, 15]);
  });

  it('refuses what is no number, no step, or no end', () => {
    expect(speeds('10, 1x5')).not.toBeInstanceOf(Array);
    expect(speeds('10 to 30 by 0')).toBe('list-does-not-step');
    expect(speeds('10 to 5000 by 1')).toBe('list-does-not-step');
  });
});
