import type { PhotoSide } from '../../core/photo/photoSide.ts';
import { done, type Outcome } from '../../core/problem.ts';
import type { CardAt, PhotoKept, Pictures } from '../ports/pictures.ts';
import type { Ports } from '../ports/ports.ts';
import { pictureToKeep } from '../shared/pictureToKeep.ts';
import { findCard } from '../shared/findCard.ts';

export interface PhotoToKeep extends CardAt {
  readonly side: PhotoSide;
  readonly bytes: Uint8Array;
}

/**
 * Keeps a photograph with its card, in the place of the one of the same side: upright, no larger than reading needs, and
 * with nothing in it but the picture, so not where and when it was taken. Refuses: `study-not-found`, `card-not-found`, and
 * what is no photograph, too large, too small or broken.
 */
export const keepPhoto = async (
  { store, ...ports }: Ports & { readonly pictures: Pictures },
  { side, bytes, ...card }: PhotoToKeep,
): Promise<Outcome<PhotoKept>> => {
  const isThere = await store.read((session) => findCard(session, card));
  if (!isThere.ok) return isThere;
  const picture = await pictureToKeep(ports, bytes, side);
  if (!picture.ok) return picture;
  const { jpeg } = picture.value;
  const kept: PhotoKept = { side, ...picture.value.kept };
  return store.change(async (session) => {
    const found = await findCard(session, card);
    if (!found.ok) return found;
    await session.keepPhoto(card, { ...kept, jpeg });
    return done(kept);
  });
};
