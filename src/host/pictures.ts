import type { Pictures } from '../app/ports/pictures.ts';

/** Pictures by sharp, which is loaded when the first one comes. */
export const sharpPictures: Pictures = {
  decode: async (bytes, file) => (await import('./decodePhoto.ts')).decodePhoto(bytes, file),
  toJpeg: async (picture, mostBytes) =>
    (await import('./encodePhoto.ts')).encodePhoto(picture, mostBytes),
};
