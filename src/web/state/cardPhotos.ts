import { useQuery, useQueryClient } from '@tanstack/react-query';
import type { PhotoSide } from '../../core/photo/photoSide.ts';
import { pagePhotoApi } from '../../wire/pageLaterApi.ts';
import { addressOf } from '../../wire/route.ts';
import { call, callOrThrow, type CallOutcome } from './call.ts';
import { keepPicture, pictureTimeLimitMs } from './keepPicture.ts';

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

/** Keeps and takes away photographs of a card, and has what was known of them asked anew. */
export const useKeepPhotos = (card: CardOfPhotos) => {
  const cache = useQueryClient();
  const asked = async <T>(outcome: Promise<CallOutcome<T>>): Promise<CallOutcome<T>> => {
    const done = await outcome;
    await cache.invalidateQueries({ queryKey: keyOf(card) });
    return done;
  };
  return {
    keep: (side: PhotoSide, photo: Blob) =>
      keepPicture(photo, side, (file) =>
        asked(
          call(pagePhotoApi.keepPhoto, {
            params: { ...card, side },
            file,
            timeLimitMs: pictureTimeLimitMs,
          }),
        ),
      ),
    remove: (side: PhotoSide) =>
      asked(call(pagePhotoApi.removePhoto, { params: { ...card, side } })),
  };
};
