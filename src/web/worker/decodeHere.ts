import { photoLimits, sizeToRead } from '../../core/photo/photoLimits.ts';
import type { Picture } from '../../core/photo/picture.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import { lookAtPhoto } from '../../formats/photoFile.ts';

/**
 * Decodes a photograph by the browser: upright as the camera says, no larger than reading needs. Looked at first, so that
 * nothing hostile is decoded. Refuses as `lookAtPhoto`; `file-too-big-to-read`; `photo-broken` where the browser cannot read it.
 */
export const decodeHere = async (file: File): Promise<Outcome<Picture>> => {
  const { name, size } = file;
  if (size > photoLimits.bytes) return refused('file-too-big-to-read', { file: name });
  const looked = lookAtPhoto(new Uint8Array(await file.arrayBuffer()), name);
  if (!looked.ok) return looked;
  const decoded = await bitmapOf(file);
  if (decoded === undefined)
    return refused('photo-broken', { file: name, detail: 'this browser cannot open it' });
  const { widthPx, heightPx } = sizeToRead(decoded.width, decoded.height);
  const canvas = new OffscreenCanvas(widthPx, heightPx);
  const context = canvas.getContext('2d', { alpha: false, willReadFrequently: true });
  if (context === null) throw new Error('this browser draws on no canvas');
  context.fillStyle = '#808080';
  context.fillRect(0, 0, widthPx, heightPx);
  context.imageSmoothingQuality = 'high';
  context.drawImage(decoded, 0, 0, widthPx, heightPx);
  decoded.close();
  return done({
    widthPx,
    heightPx,
    rgb: withoutAlpha(context.getImageData(0, 0, widthPx, heightPx).data),
  });
};

const bitmapOf = async (file: File): Promise<ImageBitmap | undefined> => {
  try {
    return await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch {
    return undefined;
  }
};

const withoutAlpha = (rgba: Uint8ClampedArray): Uint8Array => {
  const rgb = new Uint8Array((rgba.length / 4) * 3);
  for (let from = 0, to = 0; from < rgba.length; from += 4, to += 3) {
    rgb[to] = rgba[from] ?? 0;
    rgb[to + 1] = rgba[from + 1] ?? 0;
    rgb[to + 2] = rgba[from + 2] ?? 0;
  }
  return rgb;
};

/** A picture as a canvas takes it. */
export const imageDataOf = ({ widthPx, heightPx, rgb }: Picture): ImageData => {
  const data = new ImageData(widthPx, heightPx);
  for (let from = 0, to = 0; from < rgb.length; from += 3, to += 4) {
    data.data[to] = rgb[from] ?? 0;
    data.data[to + 1] = rgb[from + 1] ?? 0;
    data.data[to + 2] = rgb[from + 2] ?? 0;
    data.data[to + 3] = 255;
  }
  return data;
};
