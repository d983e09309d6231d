import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jpegWithin } from './jpegWithin.ts';

/** A picture that takes so many bytes for each per cent of quality. */
const taking = (bytesAPct: number) => {
  const asked: number[] = [];
  const encode = (qualityPct: number): Promise<Uint8Array> => {
    asked.push(qualityPct);
    return Promise.resolve(new Uint8Array(bytesAPct * qualityPct));
  };
  return { asked, encode };
};

describe('a JPEG within so many bytes', () => {
  it('is the first that fits, and none is made after it', async () => {
    const { asked, encode } = taking(10);
    expect(await jpegWithin(600, encode)).toHaveLength(600);
    expect(asked).toEqual([85, 75, 60]);
  });

  it('is the poorest where none fits', async () => {
    expect(await jpegWithin(0, taking(10).encode)).toHaveLength(200);
  });

  it('is never poorer where more bytes are allowed', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.nat(900),
        fc.nat(900),
        fc.integer({ min: 1, max: 10 }),
        async (a, b, by) => {
          const [few, many] = [Math.min(a, b), Math.max(a, b)];
          const lengthWithin = async (most: number) =>
            (await jpegWithin(most, taking(by).encode)).length;
          expect(await lengthWithin(many)).toBeGreaterThanOrEqual(await lengthWithin(few));
        },
      ),
    );
  });
});
