import sharp from 'sharp';
import type { Picture } from '../core/photo/picture.ts';

const qualities = [85, 75, 60, 40, 20] as const;

/** A JPEG made of the pixels alone, so that nothing else is in it; in the best quality that stays within so many bytes. */
export const encodePhoto = async (
  { widthPx, heightPx, rgb }: Picture,
  mostBytes: number,
): Promise<Uint8Array> => {
  const raw = sharp(rgb, { raw: { width: widthPx, height: heightPx, channels: 3 } });
  let last: Uint8Array = new Uint8Array(0);
  for (const quality of qualities) {
    last = await raw.clone().jpeg({ quality }).toBuffer();
    if (last.length <= mostBytes) break;
  }
  return last;
};
