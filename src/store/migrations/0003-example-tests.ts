import type { Migration } from './migration.ts';

/** The invented example workshop has tests of its machine too, which go with it. */
export const exampleTests: Migration = {
  number: 3,
  name: 'example-tests',
  statements: [`alter table machine_test add column is_example integer not null default 0`],
};
