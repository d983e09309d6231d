import type { Migration } from './migration.ts';

/** Studies with their cards, readings and tallies; and the book. */
export const first: Migration = {
  number: 1,
  name: 'first',
  statements: [
    `create table study (
      id text primary key,
      is_example integer not null,
      created_at text not null,
      touched_at text not null,
      revision integer not null,
      stock text not null,
      machine text not null,
      promise text not null,
      aim text not null,
      ask text not null,
      habit text
    )`,
    `create table card (
      study_id text not null references study (id) on delete cascade,
      code text not null,
      position integer not null,
      body text not null,
      primary key (study_id, code),
      unique (study_id, position)
    )`,
    `create index card_by_code on card (code)`,
    `create table reading_event (
      study_id text not null,
      id text not null,
      position integer not null,
      card_code text not null,
      body text not null,
      primary key (study_id, id),
      unique (study_id, position),
      foreign key (study_id, card_code) references card (study_id, code) on delete cascade
    )`,
    `create table proven_setting (
      id text primary key,
      code text not null,
      is_example integer not null,
      kept_at text not null,
      study_id text not null,
      body text not null
    )`,
    `create index proven_setting_by_code on proven_setting (code)`,
    `create table tally (
      id text primary key,
      position integer not null unique,
      study_id text references study (id) on delete set null,
      proven_setting_id text references proven_setting (id) on delete set null,
      body text not null
    )`,
    `create index tally_by_study on tally (study_id)`,
    `create index tally_by_proven_setting on tally (proven_setting_id)`,
  ],
};
