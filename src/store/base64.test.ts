import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { base64Of, bytesOfBase64 } from './base64.ts';

describe('bytes as text', () => {
  it.each([
    // RFC 4648, 10, test vectors.
    ['', ''],
    ['f', 'Zg=='],
    ['fo', 'Zm8='],
    ['foo', 'Zm9v'],
    ['foob', 'Zm9vYg=='],
    ['fooba', 'Zm9vYmE='],
    ['foobar', 'Zm9vYmFy'],
  ])('writes %s as %s', (text, base64) => {
    expect(base64Of(new TextEncoder().encode(text))).toBe(base64);
  });

  it('says what Node’s own says, of few bytes and of many, and reads it again', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), fc.constantFrom(1, 400), (some, times) => {
        const bytes = new Uint8Array(Buffer.concat(Array.from({ length: times }, () => some)));
        const text = base64Of(bytes);
        expect(text).toBe(Buffer.from(bytes).toString('base64'));
        expect(Buffer.from(bytesOfBase64(text)).equals(bytes)).toBe(true);
      }),
    );
  });
});
