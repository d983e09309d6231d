import type { PhotoSide } from '../../core/photo/photoSide.ts';
import { done, type Outcome } from '../../core/problem.ts';
import type { CardAt, PhotoKept, Pictures } from '../ports/pictures.ts';
import type { Ports } from '../ports/ports.ts';
import { findCard } from '../shared/findCard.ts';

/** Of one side of a card; about so much is a sharp picture of 2,000 pixels. */
const mostBytes = 1_500_000;

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
  { store, clock, pictures }: Ports & { readonly pictures: Pictures },
  { side, bytes, ...card }: PhotoToKeep,
): Promise<Outcome<PhotoKept>> => {
  const isThere = await store.read((session) => findCard(session, card));
  if (!isThere.ok) return isThere;
  const decoded = await pictures.decode(bytes, side);
  if (!decoded.ok) return decoded;
  const jpeg = await pictures.toJpeg(decoded.value, mostBytes);
  const { widthPx, heightPx } = decoded.value;
  const kept: PhotoKept = { side, keptAt: clock.now(), widthPx, heightPx };
  return store.change(async (session) => {
    const found = await findCard(session, card);
    if (!found.ok) return found;
    await session.keepPhoto(card, { ...kept, jpeg });
    return done(kept);
  });
};
