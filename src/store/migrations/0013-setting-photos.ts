import type { Migration } from './migration.ts';

/** Photographs of kept settings, which go with them; in base64, as those of cards. */
export const settingPhotos: Migration = {
  number: 13,
  name: 'setting-photos',
  statements: [
    `create table setting_photo (
      setting_id text not null references proven_setting (id) on delete cascade,
      subject text not null,
      kept_at text not null,
      width_px integer not null,
      height_px integer not null,
      jpeg text not null,
      primary key (setting_id, subject)
    )`,
  ],
};
