import { useQuery, useQueryClient } from '@tanstack/react-query';
import type { PhotoSide } from '../../core/photo/photoSide.ts';
import { problemOf } from '../../core/problem.ts';
import { pagePhotoApi } from '../../wire/pageApi.ts';
import { addressOf } from '../../wire/route.ts';
import { drawnUpright } from '../worker/onCanvas.ts';
import { call, callOrThrow, type CallOutcome } from './call.ts';

/** Which card. */
export interface CardOfPhotos {
  readonly id: string;
  readonly code: string;
}

const keyOf = ({ id, code }: CardOfPhotos) => ['card-photos', id, code];

/** What is known of the photographs kept with a card. */
export const useCardPhotos = (card: CardOfPhotos) =>
  useQuery({
    queryKey: keyOf(card),
    queryFn: () => callOrThrow(pagePhotoApi.listPhotos, { params: card }),
  });

/** `keptAt` makes a new photograph a new address, so that no old one is shown. */
export const photoAddress = (card: CardOfPhotos, side: PhotoSide, keptAt: string): string =>
  addressOf(pagePhotoApi.cardPhoto, { ...card, side }, { at: keptAt });

/** A picture over a slow line takes its time. */
const timeLimitMs = 60_000;

/** Keeps and takes away photographs of a card, and has what was known of them asked anew. */
export const useKeepPhotos = (card: CardOfPhotos) => {
  const cache = useQueryClient();
  const asked = async <T>(outcome: Promise<CallOutcome<T>>): Promise<CallOutcome<T>> => {
    const done = await outcome;
    await cache.invalidateQueries({ queryKey: keyOf(card) });
    return done;
  };
  return {
    /** Drawn anew first: what leaves this device is the picture alone, not where it was taken. */
    keep: async (side: PhotoSide, photo: Blob) => {
      const drawn = await drawnUpright(photo);
      const file = await drawn?.canvas.convertToBlob({ type: 'image/jpeg', quality: 0.85 });
      if (file === undefined) {
        const problem = problemOf('photo-not-a-picture', { file: side });
        return { ok: false, why: { kind: 'later', problem } } as const;
      }
      const params = { ...card, side };
      return asked(call(pagePhotoApi.keepPhoto, { params, file, timeLimitMs }));
    },
    remove: (side: PhotoSide) =>
      asked(call(pagePhotoApi.removePhoto, { params: { ...card, side } })),
  };
};
