import { describe, expect, it } from 'vitest';
import { parseFigure, parseWhole } from './parseWhole.ts';

const code = (read: ReturnType<typeof parseWhole>) => (read.ok ? read.value : read.problem.code);

describe('a number of things', () => {
  it.each([
    ['12', 12],
    [' 200 ', 200],
    ['200.0', 200],
    ['200,0', 200],
    ['1,200', 1200],
    ['1.200', 1200],
    ['12 000', 12_000],
    ['0', 0],
    ['', 'quantity-empty'],
    ['-3', 'quantity-negative'],
    ['many', 'quantity-not-a-number'],
    ['1.2.3', 'quantity-not-a-number'],
    ['2.5', 'quantity-not-whole'],
    ['2,5', 'quantity-not-whole'],
    ['1/2', 'quantity-not-whole'],
    ['1e3', 'quantity-figure-alone'],
    ['200 pcs', 'quantity-figure-alone'],
  ])('%j is read as %s', (text, wanted) => {
    expect(code(parseWhole(text))).toBe(wanted);
  });

  it('may be a part of one where it is just a figure', () => {
    expect(parseFigure('0,5')).toEqual({ ok: true, value: 0.5 });
    expect(code(parseFigure('3 %'))).toBe('quantity-figure-alone');
  });
});
