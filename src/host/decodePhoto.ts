import sharp, { type Metadata } from 'sharp';
import { photoLimits } from '../core/photo/photoLimits.ts';
import type { Picture } from '../core/photo/picture.ts';
import { done, refused, type Outcome } from '../core/problem.ts';

/** What phones and cameras write. Not what is drawn (SVG, PDF): that could name other files. */
const kinds: readonly string[] = ['jpeg', 'png', 'webp', 'heif'];

const { megapixels: mostMegapixels, leastPx, longestPx } = photoLimits;

/**
 * Decodes a photograph: upright as the camera says, its colours as they are, no larger than reading needs. Where it was
 * taken is not read. `file`: its name, for the refusals `photo-not-a-picture`, `photo-too-big`, `photo-too-small`,
 * `photo-broken`.
 */
export const decodePhoto = async (bytes: Uint8Array, file: string): Promise<Outcome<Picture>> => {
  const looked = await lookAt(bytes, file);
  if (!looked.ok) return looked;
  try {
    const { data, info } = await sharp(bytes, {
      limitInputPixels: mostMegapixels * 1e6,
      failOn: 'truncated',
      sequentialRead: true,
    })
      .autoOrient()
      .resize({ width: longestPx, height: longestPx, fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#808080' })
      .toColourspace('srgb')
      .raw()
      .toBuffer({ resolveWithObject: true });
    return done({ widthPx: info.width, heightPx: info.height, rgb: data });
  } catch (thrown) {
    return refused('photo-broken', { file, detail: firstLine(thrown) });
  }
};

/** Its kind and size, by its first bytes. */
const lookAt = async (bytes: Uint8Array, file: string): Promise<Outcome<undefined>> => {
  const head = await headOf(bytes);
  if (head === null || !kinds.includes(head.format))
    return refused('photo-not-a-picture', { file });
  const { width, height, pages = 1 } = head;
  const megapixels = Math.round((width * height * pages) / 1e6);
  if (megapixels > mostMegapixels)
    return refused('photo-too-big', { file, megapixels, limitMegapixels: mostMegapixels });
  if (Math.min(width, height) < leastPx)
    return refused('photo-too-small', { file, widthPx: width, heightPx: height });
  return done(undefined);
};

const headOf = async (bytes: Uint8Array): Promise<Metadata | null> => {
  try {
    return await sharp(bytes, { limitInputPixels: false }).metadata();
  } catch {
    return null;
  }
};

const firstLine = (thrown: unknown): string =>
  (thrown instanceof Error ? thrown.message : String(thrown)).split('\n')[0] ?? '';
