import type { Outcome } from '../../core/problem.ts';
import type { CardAt, Pictures } from '../ports/pictures.ts';
import type { AskingPorts } from '../ports/ports.ts';
import { findCard } from '../shared/findCard.ts';
import type { PhotosGraded } from '../sums/gradePhotos.ts';
import { readKeptPhoto } from './keptPhotos.ts';

/**
 * What the photographs kept with a card say of its shapes; nothing is noted as read. Refuses: `study-not-found`,
 * `card-not-found`, `photo-not-kept` where there is none of its front.
 */
export const gradeKeptPhotos = async (
  ports: AskingPorts & { readonly pictures: Pictures },
  at: CardAt,
): Promise<Outcome<PhotosGraded>> => {
  const card = await ports.store.read((session) => findCard(session, at));
  if (!card.ok) return card;
  const front = await readKeptPhoto(ports, at, 'front');
  if (!front.ok) return front;
  const first = await ports.pictures.decode(front.value.jpeg, 'front');
  if (!first.ok) return first;
  const photos = { front: first.value };
  const back = await readKeptPhoto(ports, at, 'back');
  if (!back.ok) return ports.model.ask('gradePhotos', { card: card.value, photos });
  const second = await ports.pictures.decode(back.value.jpeg, 'back');
  if (!second.ok) return second;
  const both = { ...photos, back: second.value };
  return ports.model.ask('gradePhotos', { card: card.value, photos: both });
};
