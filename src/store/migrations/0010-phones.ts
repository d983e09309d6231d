import type { Migration } from './migration.ts';

/** Phones that are let in, and the code that lets the next one in: shared by all programs at work in one workshop. */
export const phones: Migration = {
  number: 10,
  name: 'phones',
  statements: [
    `create table phone (
      id text primary key,
      name text not null,
      token_hash text not null unique,
      paired_at text not null,
      last_seen_at text not null
    )`,
    `create table pairing (
      id integer primary key,
      code text,
      valid_from text,
      valid_until text,
      misses integer not null,
      by_itself integer not null
    )`,
  ],
};
