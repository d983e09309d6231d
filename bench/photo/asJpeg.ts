import sharp from 'sharp';
import type { Picture } from '../../src/core/photo/picture.ts';

/** A picture as a phone stores it. */
export const asJpeg = ({ widthPx, heightPx, rgb }: Picture, quality: number): Promise<Buffer> =>
  sharp(rgb, { raw: { width: widthPx, height: heightPx, channels: 3 } })
    .jpeg({ quality })
    .toBuffer();
