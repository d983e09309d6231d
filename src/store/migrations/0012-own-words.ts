import type { Migration } from './migration.ts';

/** By which of a person's own words a card and a job are found; before this there were none. */
export const ownWords: Migration = {
  number: 12,
  name: 'own-words',
  statements: [
    `alter table card add column found_by text not null default ''`,
    `alter table started_order add column found_by text not null default ''`,
  ],
};
