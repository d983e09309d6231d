import type { Pictures } from '../../app/ports/pictures.ts';
import { decodeHere, imageDataOf } from '../../web/worker/decodeHere.ts';

const qualities = [0.85, 0.75, 0.6, 0.4, 0.2] as const;

/** Pictures by the browser's own means. */
export const canvasPictures: Pictures = {
  decode: (bytes, file) => decodeHere(new File([new Uint8Array(bytes)], file)),
  toJpeg: async (picture, mostBytes) => {
    const canvas = new OffscreenCanvas(picture.widthPx, picture.heightPx);
    canvas.getContext('2d', { alpha: false })?.putImageData(imageDataOf(picture), 0, 0);
    let last = new Uint8Array(0);
    for (const quality of qualities) {
      const jpeg = await canvas.convertToBlob({ type: 'image/jpeg', quality });
      last = new Uint8Array(await jpeg.arrayBuffer());
      if (last.length <= mostBytes) break;
    }
    return last;
  },
};
