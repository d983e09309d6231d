import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { label } from '../formats/saved/bounds.ts';
import { authorNamed } from './author.ts';

describe('an author', () => {
  it('is called as the device is, in one line', () => {
    expect(authorNamed(' bench\nphone ')).toEqual({ by: 'bench phone' });
    expect(authorNamed('\t')).toEqual({});
    expect(authorNamed(undefined)).toEqual({});
  });

  it('has a name that can be kept, whatever somebody typed', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300, size: 'max' }), (typed) => {
        const { by } = authorNamed(typed);
        expect(by === undefined || label.parse(by) === by).toBe(true);
      }),
    );
  });
});
