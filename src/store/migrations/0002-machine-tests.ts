import type { Migration } from './migration.ts';

/** What was measured of the machine itself: meterings, and where the focus was found. Neither belongs to a study. */
export const machineTests: Migration = {
  number: 2,
  name: 'machine-tests',
  statements: [
    `create table machine_test (
      id text primary key,
      position integer not null unique,
      kind text not null,
      at text not null,
      body text not null
    )`,
    `create index machine_test_by_kind on machine_test (kind, at)`,
  ],
};
