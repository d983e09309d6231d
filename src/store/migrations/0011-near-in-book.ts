import type { Migration } from './migration.ts';

/** What stands first in the book beside a sheet is found and put in order by an index alone, however long the book is. */
export const nearInBook: Migration = {
  number: 11,
  name: 'near-in-book',
  statements: [
    `create index proven_setting_near on proven_setting
      (material_key, nominal_mm, batch_key, kept_no, id)`,
  ],
};
