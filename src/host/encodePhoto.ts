import sharp from 'sharp';
import { jpegWithin } from '../core/photo/jpegWithin.ts';
import type { Picture } from '../core/photo/picture.ts';

/** A JPEG made of the pixels alone, so that nothing else is in it; in the best quality that stays within so many bytes. */
export const encodePhoto = (
  { widthPx, heightPx, rgb }: Picture,
  mostBytes: number,
): Promise<Uint8Array> => {
  const raw = sharp(rgb, { raw: { width: widthPx, height: heightPx, channels: 3 } });
  return jpegWithin(mostBytes, (quality) => raw.clone().jpeg({ quality }).toBuffer());
};
