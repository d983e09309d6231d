import type { PhotoSide } from '../../core/photo/photoSide.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import type { CardAt, PhotoKept, StoredPhoto } from '../ports/pictures.ts';
import type { Ports } from '../ports/ports.ts';

type Stored = Pick<Ports, 'store'>;

/** What is known of the photographs of a card; none of a card that is not here. */
export const listPhotos = ({ store }: Stored, card: CardAt): Promise<readonly PhotoKept[]> =>
  store.read((session) => session.photosOf(card));

/** One of them, whole. Refuses: `photo-not-kept`. */
export const readKeptPhoto = async (
  { store }: Stored,
  card: CardAt,
  side: PhotoSide,
): Promise<Outcome<StoredPhoto>> => {
  const photo = await store.read((session) => session.photo(card, side));
  return photo === undefined ? refused('photo-not-kept', { card: card.code, side }) : done(photo);
};

/** Takes one away; what was read from it stays. One that is not there is gone already. */
export const removePhoto = ({ store }: Stored, card: CardAt, side: PhotoSide) =>
  store.change(async (session) => {
    await session.deletePhoto(card, side);
    return done(undefined);
  });
