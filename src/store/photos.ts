import type { Kysely } from 'kysely';
import type { CardAt, PhotoKept, StoredPhoto } from '../app/ports/pictures.ts';
import { base64Of, bytesOfBase64 } from './base64.ts';
import { photoSides, type PhotoSide } from '../core/photo/photoSide.ts';
import type { PhotoRow, Tables } from './tables.ts';

/** What is known of the photographs of a card, the front first. */
export const photosOf = async (
  db: Kysely<Tables>,
  { studyId, code }: CardAt,
): Promise<readonly PhotoKept[]> => {
  const rows = await db
    .selectFrom('card_photo')
    .select(['side', 'kept_at', 'width_px', 'height_px'])
    .where('study_id', '=', studyId)
    .where('card_code', '=', code)
    .execute();
  return photoSides.flatMap((side) =>
    rows.flatMap((row) => (row.side === side ? [keptOf(side, row)] : [])),
  );
};

export const photoOf = async (
  db: Kysely<Tables>,
  { studyId, code }: CardAt,
  side: PhotoSide,
): Promise<StoredPhoto | undefined> => {
  const row = await db
    .selectFrom('card_photo')
    .selectAll()
    .where('study_id', '=', studyId)
    .where('card_code', '=', code)
    .where('side', '=', side)
    .executeTakeFirst();
  return row === undefined ? undefined : { ...keptOf(side, row), jpeg: bytesOfBase64(row.jpeg) };
};

const keptOf = (side: PhotoSide, row: Omit<PhotoRow, 'jpeg' | keyof CardOfRow>): PhotoKept => ({
  side,
  keptAt: row.kept_at,
  widthPx: row.width_px,
  heightPx: row.height_px,
});

type CardOfRow = Pick<PhotoRow, 'study_id' | 'card_code'>;

/** Keeps one, in the place of that of the same side. */
export const keepPhoto = async (
  db: Kysely<Tables>,
  card: CardAt,
  { side, keptAt, widthPx, heightPx, jpeg }: StoredPhoto,
): Promise<void> => {
  await deletePhoto(db, card, side);
  await db
    .insertInto('card_photo')
    .values({
      study_id: card.studyId,
      card_code: card.code,
      side,
      kept_at: keptAt,
      width_px: widthPx,
      height_px: heightPx,
      jpeg: base64Of(jpeg),
    })
    .execute();
};

export const deletePhoto = async (
  db: Kysely<Tables>,
  { studyId, code }: CardAt,
  side: PhotoSide,
): Promise<void> => {
  await db
    .deleteFrom('card_photo')
    .where('study_id', '=', studyId)
    .where('card_code', '=', code)
    .where('side', '=', side)
    .execute();
};

/** Takes away those of studies that are gone for good. */
export const sweepPhotos = async (db: Kysely<Tables>): Promise<void> => {
  await db
    .deleteFrom('card_photo')
    .where('study_id', 'not in', db.selectFrom('study').select('id'))
    .where('study_id', 'not in', db.selectFrom('removed_study').select('id'))
    .execute();
};
