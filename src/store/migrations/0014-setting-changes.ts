import type { Migration } from './migration.ts';

/**
 * What was done to kept settings, and by whom. `undoes` is unique: of two who take one change back at once, one does.
 * `aside` holds for a day what went with a setting that was taken out, so that it can come back with it.
 */
export const settingChanges: Migration = {
  number: 14,
  name: 'setting-changes',
  statements: [
    `create table setting_change (
      id text primary key,
      position integer not null unique,
      at text not null,
      setting_id text not null,
      undoes text unique,
      is_example integer not null,
      body text not null,
      aside text
    )`,
    `create index setting_change_by_setting on setting_change (setting_id, position)`,
    `create index setting_change_with_aside on setting_change (at) where aside is not null`,
    `create index study_by_strip on study (strip_of) where strip_of is not null`,
  ],
};
