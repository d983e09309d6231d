/// <reference lib="webworker" />
import { flatCard } from '../../core/photo/flatCard.ts';
import { readPhoto } from '../../core/photo/readPhoto.ts';
import { decodeHere, imageDataOf } from './decodeHere.ts';
import type { PhotoQuestion, PhotoReply } from './photoMessages.ts';

declare const self: DedicatedWorkerGlobalScope;

/** Sharp on a phone held upright, and light enough for one. */
const flatPx = 1100;

const say = (reply: PhotoReply): void => self.postMessage(reply);

const answer = async ({ card, front, back }: PhotoQuestion): Promise<PhotoReply> => {
  say({ kind: 'at', step: 'opening' });
  const first = await decodeHere(front);
  if (!first.ok) return { kind: 'refused', problem: first.problem };
  const second = back === undefined ? undefined : await decodeHere(back);
  if (second?.ok === false) return { kind: 'refused', problem: second.problem };
  const [onFront, onBack] = [first.value, second?.value];
  const photos = { front: onFront, ...(onBack === undefined ? {} : { back: onBack }) };
  const read = readPhoto(card, photos, (step) => say({ kind: 'at', step }));
  const { toPx, backToPx } = read;
  return {
    kind: 'read',
    read,
    flat: {
      ...(toPx === undefined
        ? {}
        : { front: imageDataOf(flatCard({ picture: onFront, toPx }, card, flatPx)) }),
      ...(onBack === undefined || backToPx === undefined
        ? {}
        : { back: imageDataOf(flatCard({ picture: onBack, toPx: backToPx }, card, flatPx)) }),
    },
  };
};

self.addEventListener('message', ({ data }: MessageEvent<PhotoQuestion>) => {
  void answer(data)
    .catch((error: unknown): PhotoReply => {
      return { kind: 'broke', message: error instanceof Error ? error.message : String(error) };
    })
    .then(say);
});
