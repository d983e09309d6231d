import { flatCard } from '../../core/photo/flatCard.ts';
import { tonesOnPhoto } from '../../core/marking/tonesOnPhoto.ts';
import { readPhoto } from '../../core/photo/readPhoto.ts';
import { done } from '../../core/problem.ts';
import { decodeHere, imageDataOf } from './decodeHere.ts';
import { serveCalls } from './serveCalls.ts';

/** Sharp on a phone held upright, and light enough for one. */
const flatPx = 1100;

serveCalls({
  tones: async ({ steps, photo, corners }) => {
    const decoded = await decodeHere(photo);
    return decoded.ok ? tonesOnPhoto(steps, decoded.value, corners) : decoded;
  },
  photo: async ({ card, front, back, corners }, tell) => {
    tell('opening');
    const first = await decodeHere(front);
    if (!first.ok) return first;
    const second = back === undefined ? undefined : await decodeHere(back);
    if (second?.ok === false) return second;
    const [onFront, onBack] = [first.value, second?.value];
    const photos = {
      front: onFront,
      ...(onBack === undefined ? {} : { back: onBack }),
      ...(corners === undefined ? {} : { corners }),
    };
    const read = readPhoto(card, photos, tell);
    const { toPx, backToPx } = read;
    return done({
      read,
      flat: {
        ...(toPx === undefined
          ? {}
          : { front: imageDataOf(flatCard({ picture: onFront, toPx }, card, flatPx)) }),
        ...(onBack === undefined || backToPx === undefined
          ? {}
          : { back: imageDataOf(flatCard({ picture: onBack, toPx: backToPx }, card, flatPx)) }),
      },
    });
  },
});
