import type { EntryColumns, StockColumns } from './foundBy.ts';

/**
 * The rows, as both engines hold them: texts, whole numbers and double precision only; JSON and ISO times as text; yes
 * and no as 1 and 0. Order is kept by `position`, counted up in the session that inserts.
 */
export interface Tables {
  readonly schema_step: SchemaStepRow;
  readonly machine: MachineRow;
  readonly study: StudyRow;
  readonly card: CardRow;
  readonly reading_event: EventRow;
  readonly card_photo: PhotoRow;
  readonly started_order: OrderRow;
  readonly tally: TallyRow;
  readonly proven_setting: EntryRow;
  readonly setting_photo: SettingPhotoRow;
  readonly setting_change: SettingChangeRow;
  readonly machine_test: MachineTestRow;
  readonly removed_study: RemovedStudyRow;
  readonly phone: PhoneRow;
  readonly pairing: PairingRow;
}

/** One migration that has run. */
export interface SchemaStepRow {
  readonly number: number;
  readonly name: string;
  readonly applied_at: string;
}

export interface MachineRow {
  readonly id: string;
  readonly position: number;
  readonly is_example: number;
  readonly is_default: number;
  readonly added_at: string;
  readonly body: string;
  readonly changes: string;
  readonly found_by: string;
}

export interface StudyRow extends StockColumns {
  readonly id: string;
  readonly is_example: number;
  readonly created_at: string;
  readonly touched_at: string;
  readonly revision: number;
  readonly stock: string;
  readonly machine_id: string;
  readonly promise: string;
  readonly aim: string;
  readonly ask: string;
  readonly habit: string | null;
  /** When it was last put on the bed; null: never. */
  readonly on_bed_at: string | null;
  readonly strip_of: string | null;
  /** Counts every touch of any study: the highest was touched last, whatever the clock said. */
  readonly touched_no: number;
  /** The same for the bed; null: never there. */
  readonly on_bed_no: number | null;
}

export interface CardRow {
  readonly study_id: string;
  readonly code: string;
  readonly position: number;
  readonly body: string;
  readonly found_by: string;
}

export interface EventRow {
  readonly study_id: string;
  readonly id: string;
  readonly position: number;
  readonly card_code: string;
  readonly body: string;
}

/** A photograph of a card. Of a study that was removed it stays until that can come back no more. */
export interface PhotoRow {
  readonly study_id: string;
  readonly card_code: string;
  readonly side: string;
  readonly kept_at: string;
  readonly width_px: number;
  readonly height_px: number;
  /** In base64: the one kind of column for bytes that every engine calls the same. */
  readonly jpeg: string;
}

export interface OrderRow {
  readonly id: string;
  readonly study_id: string;
  readonly position: number;
  readonly body: string;
  readonly found_by: string;
}

export interface TallyRow {
  readonly id: string;
  readonly position: number;
  readonly study_id: string | null;
  readonly proven_setting_id: string | null;
  readonly body: string;
}

export interface EntryRow extends EntryColumns {
  readonly id: string;
  readonly code: string;
  readonly is_example: number;
  readonly kept_at: string;
  /** The highest was kept last. */
  readonly kept_no: number;
  /** Where it came from; that study may be gone. */
  readonly study_id: string;
  /** Absent: nobody knows. */
  readonly machine_id: string | null;
  readonly body: string;
}

/** A photograph of a kept setting, with which it goes. */
export interface SettingPhotoRow {
  readonly setting_id: string;
  readonly subject: string;
  readonly kept_at: string;
  readonly width_px: number;
  readonly height_px: number;
  /** In base64, as a card's. */
  readonly jpeg: string;
}

/** What was done to a kept setting. */
export interface SettingChangeRow {
  readonly id: string;
  readonly position: number;
  readonly at: string;
  readonly setting_id: string;
  /** The change that it takes back. */
  readonly undoes: string | null;
  readonly is_example: number;
  readonly body: string;
  /** JSON: what went with the setting, for as long as it can come back. */
  readonly aside: string | null;
}

/** Something measured of the machine itself. */
export interface MachineTestRow {
  readonly id: string;
  readonly position: number;
  readonly kind: string;
  readonly at: string;
  readonly is_example: number;
  readonly machine_id: string | null;
  readonly body: string;
}

/** A study that was removed, whole, until newer ones take its place. */
export interface RemovedStudyRow {
  readonly id: string;
  readonly is_example: number;
  readonly removed_at: string;
  readonly body: string;
}

/** A phone that is let in. */
export interface PhoneRow {
  readonly id: string;
  /** JSON. */
  readonly name: string;
  /** What it may do. */
  readonly role: string;
  readonly token_hash: string;
  readonly paired_at: string;
  readonly last_seen_at: string;
}

/** Who gets in just now; no row: nobody. Times are ISO 8601, UTC. */
export interface PairingRow {
  readonly id: number;
  readonly code: string | null;
  readonly valid_from: string | null;
  readonly valid_until: string | null;
  readonly misses: number;
  readonly by_itself: number;
  /** What the phone may do that types the code; null: from before there were roles. */
  readonly role: string | null;
}
