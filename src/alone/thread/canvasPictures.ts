import type { Pictures } from '../../app/ports/pictures.ts';
import { jpegWithin } from '../../core/photo/jpegWithin.ts';
import { decodeHere, imageDataOf } from '../../web/worker/decodeHere.ts';

/** Pictures by the browser's own means. */
export const canvasPictures: Pictures = {
  decode: (bytes, file) => decodeHere(new File([new Uint8Array(bytes)], file)),
  toJpeg: async (picture, mostBytes) => {
    const canvas = new OffscreenCanvas(picture.widthPx, picture.heightPx);
    canvas.getContext('2d', { alpha: false })?.putImageData(imageDataOf(picture), 0, 0);
    return jpegWithin(mostBytes, async (qualityPct) => {
      const jpeg = await canvas.convertToBlob({ type: 'image/jpeg', quality: qualityPct / 100 });
      return new Uint8Array(await jpeg.arrayBuffer());
    });
  },
};
