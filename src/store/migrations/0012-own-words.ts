import type { Migration } from './migration.ts';

/** By which of a person's own words a card and a job are found; before this there were none. */
export const ownWords: Migration = {
  number: 12,
  name: 'own-words',
  statements: [
    `alter table card add column found_by text not null default ''`,
    `alter table started_order add column found_by text not null default ''`,
    // Most have no such words, and are then never read for them. The words themselves are longer than a server's index takes.
    `create index card_by_own_words on card (study_id) where found_by <> ''`,
    `create index order_by_own_words on started_order (study_id) where found_by <> ''`,
  ],
};
