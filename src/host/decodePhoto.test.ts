import sharp, { type Sharp } from 'sharp';
import { describe, expect, it } from 'vitest';
import { decodePhoto } from './decodePhoto.ts';

/** Left half red, right half blue. */
const halves = (widthPx = 400, heightPx = 300): Sharp =>
  sharp(
    Buffer.from(
      Array.from({ length: widthPx * heightPx }, (_, k) =>
        k % widthPx < widthPx / 2 ? [200, 20, 20] : [20, 20, 200],
      ).flat(),
    ),
    { raw: { width: widthPx, height: heightPx, channels: 3 } },
  );

/** A PNG whose head claims another size than it has: width and height are in its first chunk, under a CRC-32. */
const claiming = (png: Buffer, widthPx: number, heightPx: number): Buffer => {
  const claims = Buffer.from(png);
  claims.writeUInt32BE(widthPx, 16);
  claims.writeUInt32BE(heightPx, 20);
  let crc = ~0;
  for (const byte of claims.subarray(12, 29)) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit += 1) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  claims.writeUInt32BE(~crc >>> 0, 29);
  return claims;
};

const codeOf = async (bytes: Uint8Array): Promise<string> => {
  const decoded = await decodePhoto(bytes, 'card.jpg');
  return decoded.ok ? 'decoded' : decoded.problem.code;
};

describe('a photograph', () => {
  it.each(['jpeg', 'png', 'webp', 'avif'] as const)('is decoded from %s', async (kind) => {
    const decoded = await decodePhoto(await halves().toFormat(kind).toBuffer(), 'x');
    if (!decoded.ok) throw new Error(decoded.problem.code);
    const { widthPx, heightPx, rgb } = decoded.value;
    expect([widthPx, heightPx, rgb.length]).toEqual([400, 300, 360_000]);
    expect(rgb[0]).toBeGreaterThan(150);
    expect(rgb[3 * 399 + 2]).toBeGreaterThan(150);
  });

  it('stands upright as the camera says, whatever way it was held', async () => {
    // 6: the camera was turned by a quarter; the picture's left is then up.
    const turned = await halves().jpeg().withMetadata({ orientation: 6 }).toBuffer();
    const decoded = await decodePhoto(turned, 'x');
    if (!decoded.ok) throw new Error(decoded.problem.code);
    const { widthPx, heightPx, rgb } = decoded.value;
    expect([widthPx, heightPx]).toEqual([300, 400]);
    expect(rgb[3 * 150]).toBeGreaterThan(150);
    expect(rgb[3 * (399 * 300 + 150) + 2]).toBeGreaterThan(150);
  });

  it('is made no larger than reading needs', async () => {
    const decoded = await decodePhoto(
      await halves().resize(2600, 1300, { fit: 'fill' }).jpeg().toBuffer(),
      'x',
    );
    expect(decoded.ok && [decoded.value.widthPx, decoded.value.heightPx]).toEqual([2000, 1000]);
  });

  it('is none where it is a drawing, words, or nothing, whatever it is called', async () => {
    const svg =
      '<svg xmlns="http://www.w3.org/2000/svg" width="400" height="300"><rect width="9" height="9"/></svg>';
    expect(await codeOf(Buffer.from(svg))).toBe('photo-not-a-picture');
    expect(await codeOf(Buffer.from('%PDF-1.7 and so on'))).toBe('photo-not-a-picture');
    expect(await codeOf(Buffer.from('not at all'))).toBe('photo-not-a-picture');
    expect(await codeOf(new Uint8Array(0))).toBe('photo-not-a-picture');
    expect(await codeOf(await halves().gif().toBuffer())).toBe('photo-not-a-picture');
  });

  it('is refused cut off, too small, or larger than anything that is read', async () => {
    const jpeg = await halves().jpeg().toBuffer();
    expect(await codeOf(jpeg.subarray(0, jpeg.length / 2))).toBe('photo-broken');
    expect(await codeOf(await halves(120, 90).jpeg().toBuffer())).toBe('photo-too-small');
    const bomb = claiming(await halves().png().toBuffer(), 20_000, 20_000);
    expect(await codeOf(bomb)).toBe('photo-too-big');
  });
});
