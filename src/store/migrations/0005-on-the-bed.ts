import type { Migration } from './migration.ts';

/**
 * Which sheet lies on the bed is said, no longer guessed from what was touched last; a strip belongs to the setting that it
 * checks; and a removed sheet can come back. Strips were known by the names that this program gave their sheets.
 */
export const onTheBed: Migration = {
  number: 5,
  name: 'on-the-bed',
  statements: [
    `alter table study add column on_bed_at text`,
    `alter table study add column strip_of text`,
    `update study set on_bed_at = touched_at
      where stock not like '%"sheet":"kept back"%' and stock not like '%"sheet":"first sheet"%'`,
    `create table removed_study (
      id text primary key,
      is_example integer not null,
      removed_at text not null,
      body text not null
    )`,
  ],
};
