import type { Migration } from './migration.ts';

/** What phones may do. Those that were let in before may go on doing all that they could. */
export const rolesOfPhones: Migration = {
  number: 15,
  name: 'roles',
  statements: [
    `alter table phone add column role text not null default 'runs-the-place'`,
    `alter table pairing add column role text`,
  ],
};
