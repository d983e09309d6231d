import { photoLimits } from '../../core/photo/photoLimits.ts';
import type { Picture } from '../../core/photo/picture.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import { lookAtPhoto } from '../../formats/photoFile.ts';
import { drawnUpright } from './onCanvas.ts';

/**
 * Decodes a photograph by the browser: upright as the camera says, no larger than reading needs. Looked at first, so that
 * nothing hostile is decoded. Refuses as `lookAtPhoto`; `file-too-big-to-read`; `photo-broken` where the browser cannot read it.
 */
export const decodeHere = async (file: File): Promise<Outcome<Picture>> => {
  const { name, size } = file;
  if (size > photoLimits.bytes) return refused('file-too-big-to-read', { file: name });
  const looked = lookAtPhoto(new Uint8Array(await file.arrayBuffer()), name);
  if (!looked.ok) return looked;
  const drawn = await drawnUpright(file);
  if (drawn === undefined)
    return refused('photo-broken', { file: name, detail: 'this browser cannot open it' });
  const { width: widthPx, height: heightPx } = drawn.canvas;
  const { data } = drawn.context.getImageData(0, 0, widthPx, heightPx);
  return done({ widthPx, heightPx, rgb: withoutAlpha(data) });
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
