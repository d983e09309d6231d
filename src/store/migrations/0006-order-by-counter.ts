import type { Migration } from './migration.ts';

/** What stood in front by the clock when counters began. */
const rank = (table: string, by: string): string =>
  `(select count(*) from ${table} other where other.${by} < ${table}.${by}
      or (other.${by} = ${table}.${by} and other.id >= ${table}.id))`;

/**
 * What came last is told by a counter, not by a clock that somebody may set back. And two kinds of machine test may have one
 * id: they are made by different pages.
 */
export const orderByCounter: Migration = {
  number: 6,
  name: 'order-by-counter',
  statements: [
    `alter table study add column touched_no integer not null default 0`,
    `alter table study add column on_bed_no integer`,
    `alter table proven_setting add column kept_no integer not null default 0`,
    `update study set touched_no = ${rank('study', 'touched_at')}`,
    `update study set on_bed_no = ${rank('study', 'on_bed_at')} where on_bed_at is not null`,
    `update proven_setting set kept_no = ${rank('proven_setting', 'kept_at')}`,
    `create index study_by_touch on study (touched_no)`,
    `create index study_by_bed on study (is_example, on_bed_no)`,
    `create index proven_setting_by_keeping on proven_setting (kept_no)`,
    `create table machine_test_of_kind (
      id text not null,
      position integer not null unique,
      kind text not null,
      at text not null,
      body text not null,
      is_example integer not null default 0,
      machine_id text references machine (id),
      primary key (kind, id)
    )`,
    `insert into machine_test_of_kind (id, position, kind, at, body, is_example, machine_id)
      select id, position, kind, at, body, is_example, machine_id from machine_test`,
    `drop table machine_test`,
    `alter table machine_test_of_kind rename to machine_test`,
    `create index machine_test_by_kind on machine_test (kind, at)`,
  ],
};
