import type { Migration } from './migration.ts';

/**
 * Photographs of cards. They hang on no card's row, since they outlive a study that was removed and may come back; and stand
 * in base64, since the engines have no common name for bytes.
 */
export const cardPhotos: Migration = {
  number: 9,
  name: 'card-photos',
  statements: [
    `create table card_photo (
      study_id text not null,
      card_code text not null,
      side text not null,
      kept_at text not null,
      width_px integer not null,
      height_px integer not null,
      jpeg text not null,
      primary key (study_id, card_code, side)
    )`,
  ],
};
