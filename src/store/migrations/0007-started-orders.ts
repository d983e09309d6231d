import type { Migration } from './migration.ts';

/** Orders that are cut sheet by sheet stand with their sheet. */
export const startedOrders: Migration = {
  number: 7,
  name: 'started-orders',
  statements: [
    `create table started_order (
      id text primary key,
      study_id text not null references study (id) on delete cascade,
      position integer not null,
      body text not null,
      unique (study_id, position)
    )`,
  ],
};
