import type { PromiseCheck } from '../core/book/promiseCheck.ts';
import type { ProvenSetting } from '../core/book/provenSetting.ts';
import { airKey } from '../core/machine/air.ts';

interface Row {
  readonly entry: ProvenSetting;
  readonly check: PromiseCheck;
}

/** The columns, in order; each named with its unit. */
const columns: Readonly<Record<string, (row: Row) => string | number | undefined>> = {
  code: ({ entry }) => entry.code,
  kept_at: ({ entry }) => entry.keptAt,
  machine: ({ entry }) => entry.holdsFor.machine,
  material: ({ entry }) => entry.holdsFor.material,
  nominal_thickness_mm: ({ entry }) => entry.holdsFor.nominalThicknessMm,
  measured_thickness_mm: ({ entry }) => entry.holdsFor.measuredThicknessMm,
  batch: ({ entry }) => entry.holdsFor.batch,
  sheet: ({ entry }) => entry.holdsFor.sheet,
  power_pct: ({ entry }) => entry.setting.powerPct,
  power_in_corners_pct: ({ entry }) => entry.setting.minPowerPct ?? entry.setting.powerPct,
  speed_mm_per_s: ({ entry }) => entry.setting.speedMmPerS,
  passes: ({ entry }) => entry.setting.passes,
  air: ({ entry }) => airKey(entry.setting.air),
  promised_out_of_100: ({ entry }) => entry.promise.outOf100,
  promised_sure_pct: ({ entry }) => entry.promise.surePct,
  promised_for: ({ entry }) => entry.promise.for,
  part_length_mm: ({ entry }) => entry.promise.partLengthMm,
  model_out_of_100: ({ entry }) => entry.outOf100Mean,
  model_sure_pct: ({ entry }) => entry.surePct,
  parts_tallied: ({ check }) => check.parts,
  parts_not_out: ({ check }) => check.notOut,
  parts_spoilt: ({ check }) => check.spoilt,
  verdict: ({ check }) => check.verdict,
  persons_choice: ({ entry }) => entry.personsChoice,
  note: ({ entry }) => entry.note,
};

/** The book as a flat table (RFC 4180: commas, CRLF, quotes doubled), one line a setting. */
export const bookCsv = (rows: readonly Row[]): string =>
  [
    Object.keys(columns),
    ...rows.map((row) => Object.values(columns).map((valueOf) => valueOf(row) ?? '')),
  ]
    .map((cells) => `${cells.map(cell).join(',')}\r\n`)
    .join('');

/**
 * A text that a spreadsheet would take for a formula gets an apostrophe before it: a note that came with an import must
 * not be able to run anything.
 */
const cell = (value: string | number): string => {
  if (typeof value === 'number') return String(value);
  const harmless = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
};
