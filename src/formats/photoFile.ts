import { HEIF } from 'image-size/types/heif';
import { JPG } from 'image-size/types/jpg';
import { PNG } from 'image-size/types/png';
import { WEBP } from 'image-size/types/webp';
import { photoLimits } from '../core/photo/photoLimits.ts';
import { done, refused, type Outcome } from '../core/problem.ts';

/**
 * What phones and cameras write, by their first bytes, whatever the name says. Not what is drawn (SVG, PDF): that could
 * name other files.
 */
const kinds = {
  jpeg: { head: JPG, isWhole: (bytes: Uint8Array) => jpegEnds(bytes) },
  png: { head: PNG, isWhole: (bytes: Uint8Array) => pngEnds(bytes) },
  webp: { head: WEBP, isWhole: (bytes: Uint8Array) => 8 + uint32(bytes, 4, true) <= bytes.length },
  heif: { head: HEIF, isWhole: (bytes: Uint8Array) => boxesEnd(bytes) },
} as const;

/** What is known of a photograph before it is decoded. */
export interface PhotoHead {
  readonly kind: keyof typeof kinds;
  /** As stored, not yet turned upright. */
  readonly widthPx: number;
  readonly heightPx: number;
}

/**
 * Looks at a photograph's bytes before anything decodes them, so that what would take too much memory, or is cut off, never
 * is. `file`: its name, for the refusals `photo-not-a-picture`, `photo-too-big`, `photo-too-small`, `photo-broken`. O(bytes).
 */
export const lookAtPhoto = (bytes: Uint8Array, file: string): Outcome<PhotoHead> => {
  const kind = kindOf(bytes);
  if (kind === undefined) return refused('photo-not-a-picture', { file });
  const size = sizeIn(bytes, kind);
  if (size === undefined) return refused('photo-broken', { file, detail: 'it says no size' });
  const { width, height } = size;
  const megapixels = Math.round((width * height) / 1e6);
  if (megapixels > photoLimits.megapixels) {
    const limitMegapixels = photoLimits.megapixels;
    return refused('photo-too-big', { file, megapixels, limitMegapixels });
  }
  if (Math.min(width, height) < photoLimits.leastPx)
    return refused('photo-too-small', { file, widthPx: width, heightPx: height });
  if (!kinds[kind].isWhole(bytes))
    return refused('photo-broken', { file, detail: 'it is cut off' });
  return done({ kind, widthPx: width, heightPx: height });
};

const tried = <T>(work: () => T): T | undefined => {
  try {
    return work();
  } catch {
    return undefined;
  }
};

const kindOf = (bytes: Uint8Array): PhotoHead['kind'] | undefined =>
  (['jpeg', 'png', 'webp', 'heif'] as const).find(
    (kind) => tried(() => kinds[kind].head.validate(bytes)) === true,
  );

const sizeIn = (bytes: Uint8Array, kind: PhotoHead['kind']) => {
  const size = tried(() => kinds[kind].head.calculate(bytes));
  return size !== undefined && size.width > 0 && size.height > 0 ? size : undefined;
};

const uint32 = (bytes: Uint8Array, at: number, isLittle: boolean): number =>
  at + 4 <= bytes.length
    ? new DataView(bytes.buffer, bytes.byteOffset).getUint32(at, isLittle)
    : Infinity;

/** ITU T.81, B.1.1: segments up to the first scan, whose data have no FF D9 but the one that ends the picture. */
const jpegEnds = (bytes: Uint8Array): boolean => {
  let at = 2;
  while (at + 3 < bytes.length && bytes[at] === 0xff) {
    const marker = bytes[at + 1] ?? 0;
    at += 2 + (bytes[at + 2] ?? 0) * 256 + (bytes[at + 3] ?? 0);
    if (marker === 0xda) break;
  }
  for (; at + 1 < bytes.length; at += 1)
    if (bytes[at] === 0xff && bytes[at + 1] === 0xd9) return true;
  return false;
};

/** ISO/IEC 15948, 5.3: chunks of a length, a name and a check sum, the last one named IEND. */
const pngEnds = (bytes: Uint8Array): boolean => {
  for (let at = 8; at + 12 <= bytes.length; at += 12 + uint32(bytes, at, false))
    if (uint32(bytes, at + 4, false) === 0x49454e44) return true;
  return false;
};

/** ISO/IEC 14496-12, 4.2: boxes that say how long they are; 0 means up to the end. */
const boxesEnd = (bytes: Uint8Array): boolean => {
  let at = 0;
  while (at + 8 <= bytes.length) {
    const long = uint32(bytes, at, false);
    if (long === 0) return true;
    at += long === 1 ? uint32(bytes, at + 12, false) : Math.max(8, long);
  }
  return at === bytes.length;
};
