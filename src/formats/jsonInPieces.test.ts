import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jsonInPieces } from './jsonInPieces.ts';

describe('JSON in pieces', () => {
  it('gives each element of a list by itself', () => {
    expect([...jsonInPieces({ kind: 'some', list: [1, { a: 'b' }], none: [] })]).toEqual([
      '{"kind":',
      '"some"',
      ',"list":',
      '[1',
      ',{"a":"b"}',
      ']',
      ',"none":',
      '[]',
      '}',
    ]);
  });

  it('is the text that JSON.stringify makes', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string(), fc.jsonValue()), (whole) => {
        expect([...jsonInPieces(whole)].join('')).toBe(JSON.stringify(whole));
      }),
    );
    expect([...jsonInPieces({ not: undefined })].join('')).toBe('{}');
  });
});
