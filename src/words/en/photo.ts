import type { PhotoCode } from '../../core/problems/photo.ts';
import type { Sentences } from '../shape/sentence.ts';

/** What is said of photographs of cards. */
export const photoWords = {
  'photo-not-a-picture': {
    message: (p) => `${p.file} is not a photograph in JPEG, PNG, WebP or AVIF.`,
    remedy: () => 'Save the picture in one of these, as every phone can.',
  },
  'photo-too-big': {
    message: (p) =>
      `${p.file} has ${p.megapixels} megapixels, more than the ${p.limitMegapixels} that are read.`,
    remedy: () => 'Make it smaller: 4 megapixels show a card well.',
  },
  'photo-too-small': {
    message: (p) => `${p.file} is only ${p.widthPx} by ${p.heightPx} pixels.`,
    remedy: () => 'Take a picture of 800 by 600 pixels at least, the card filling most of it.',
  },
  'photo-broken': {
    message: (p) => `${p.file} cannot be read to its end: ${p.detail}.`,
    remedy: () => 'Copy it again from the phone, or take another.',
  },
  'photo-card-not-found': {
    message: () => 'This card is not found on the picture of its front.',
    remedy: () =>
      'Lay it on a sheet of a plain colour unlike its own, all four sides in view, the scored side up, in even light; and look whether it is the card that was named.',
  },
  'photo-code-unlike': {
    message: (p) => `The code on the picture does not look like ${p.code}.`,
    remedy: () => 'Look whether this is that card, and whether something lies over its code.',
  },
  'photo-little-contrast': {
    message: () =>
      'What lies under the card looks nearly like the card, so that holes hardly show.',
    remedy: () => 'Lay it on a sheet of another colour and take the picture again.',
  },
  'photo-no-back': {
    message: (p) =>
      `Without a picture of the back it is not sure of ${p.count} ${p.count === '1' ? 'shape' : 'shapes'} in place whether ${p.count === '1' ? 'it hangs or is' : 'they hang or are'} not through.`,
    remedy: () => 'Turn the card over and take a picture of the back too.',
  },
  'photo-back-not-clear': {
    message: () => 'The picture of the back could not be laid over the front, and was left out.',
    remedy: () =>
      'Take it again with all four sides in view. Where no shape is out, the back may lie either way: look at it by eye.',
  },
  'photo-cant-tell': {
    message: (p) =>
      `Of ${p.count} ${p.count === '1' ? 'shape' : 'shapes'} the picture does not tell.`,
    remedy: () => 'Look at these by eye, or take another picture without hand, shadow or glare.',
  },
  'tones-corners': {
    message: () =>
      'The shades and the paper beside them are not all within the photo, as it was pointed at.',
    remedy: () =>
      'Point at the four corner signs of the shades again, the upper left one first, or take a photo that shows the paper on both sides as well.',
  },
  'tones-too-small': {
    message: (p) =>
      `The shades are too small on the photo: fewer than ${p.leastPxPerMm} pixels a millimetre.`,
    remedy: () => 'Go nearer: the shades and the two strips of paper should fill the photo.',
  },
  'tones-no-paper': {
    message: () => 'There seems to be no plain white paper right and left of the shades.',
    remedy: () =>
      'Lay a strip of white paper on each side, up to the corner signs and as high as all the shades, with nothing on it and no edge of a shadow over it.',
  },
  'tones-burnt-out': {
    message: () =>
      'The paper is burnt out to pure white, so the photo does not tell how light it is.',
    remedy: () =>
      'Take it darker: touch the paper on the phone’s picture before you release, or turn the lamp away.',
  },
} as const satisfies Sentences<PhotoCode>;
