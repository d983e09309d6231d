import sharp, { type Sharp } from 'sharp';
import { describe, expect, it } from 'vitest';
import { lookAtPhoto } from './photoFile.ts';

const plain = (width = 640, height = 480): Sharp =>
  sharp({ create: { width, height, channels: 3, background: '#a86' } });

const kinds = ['jpeg', 'png', 'webp', 'avif'] as const;

const codeOf = (bytes: Uint8Array): string => {
  const looked = lookAtPhoto(bytes, 'card');
  return looked.ok ? 'taken' : looked.problem.code;
};

describe('a photograph’s bytes', () => {
  it.each(kinds)('tell kind and size: %s', async (kind) => {
    expect(lookAtPhoto(await plain().toFormat(kind).toBuffer(), 'card')).toMatchObject({
      ok: true,
      value: { kind: kind === 'avif' ? 'heif' : kind, widthPx: 640, heightPx: 480 },
    });
  });

  it.each(kinds)('are refused when they are cut off anywhere: %s', async (kind) => {
    const bytes = await plain().toFormat(kind).toBuffer();
    for (const share of [0.3, 0.6, 0.9])
      expect(codeOf(bytes.subarray(0, Math.floor(bytes.length * share)))).toMatch(
        /^photo-(broken|not-a-picture)$/,
      );
    expect(codeOf(bytes.subarray(0, bytes.length - 1))).toBe('photo-broken');
  });

  it('may have more behind the picture, as some phones put there', async () => {
    const film = Buffer.alloc(2000, 7);
    for (const kind of ['jpeg', 'png', 'webp'] as const)
      expect(codeOf(Buffer.concat([await plain().toFormat(kind).toBuffer(), film]))).toBe('taken');
  });

  it('are refused where the picture would be too large or too small, whatever it holds', async () => {
    const png = await plain().png().toBuffer();
    png.writeUInt32BE(50_000, 16);
    png.writeUInt32BE(50_000, 20);
    expect(lookAtPhoto(png, 'card')).toMatchObject({
      problem: { code: 'photo-too-big', params: { megapixels: 2500, limitMegapixels: 60 } },
    });
    expect(codeOf(await plain(100, 3000).jpeg().toBuffer())).toBe('photo-too-small');
  });

  it('are refused where they are of something else, whatever its name says', async () => {
    const svg = '<svg xmlns="http://www.w3.org/2000/svg" width="900" height="900"/>';
    const others = [
      Buffer.from(svg),
      Buffer.from(`<?xml version="1.0"?>${svg}`),
      Buffer.from('%PDF-1.7'),
      Buffer.alloc(0),
      await plain().gif().toBuffer(),
      await plain().tiff().toBuffer(),
    ];
    for (const bytes of others) expect(codeOf(bytes)).toBe('photo-not-a-picture');
  });
});
