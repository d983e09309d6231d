import { cornerPowerPct } from '../core/machine/setting.ts';
import type { ProvenSetting } from '../core/book/provenSetting.ts';
import type { Standing } from '../core/standing/standing.ts';
import { airKey } from '../core/machine/air.ts';
import { csvTable, type Columns } from './csv.ts';

interface Row {
  readonly entry: ProvenSetting;
  readonly standing: Standing;
}

const columns: Columns<Row> = {
  code: ({ entry }) => entry.code,
  kept_at: ({ entry }) => entry.keptAt,
  machine: ({ entry }) => entry.holdsFor.machine,
  material: ({ entry }) => entry.holdsFor.material,
  nominal_thickness_mm: ({ entry }) => entry.holdsFor.nominalThicknessMm,
  measured_thickness_mm: ({ entry }) => entry.holdsFor.measuredThicknessMm,
  batch: ({ entry }) => entry.holdsFor.batch,
  sheet: ({ entry }) => entry.holdsFor.sheet,
  power_pct: ({ entry }) => entry.setting.powerPct,
  power_in_corners_pct: ({ entry }) => cornerPowerPct(entry.setting),
  speed_mm_per_s: ({ entry }) => entry.setting.speedMmPerS,
  passes: ({ entry }) => entry.setting.passes,
  air: ({ entry }) => airKey(entry.setting.air),
  promised_out_of_100: ({ entry }) => entry.promise.outOf100,
  promised_sure_pct: ({ entry }) => entry.promise.surePct,
  promised_for: ({ entry }) => entry.promise.for,
  part_length_mm: ({ standing }) => standing.promise.partLengthMm,
  model_out_of_100: ({ entry }) => entry.outOf100Mean,
  model_sure_pct: ({ entry }) => entry.surePct,
  parts_counted: ({ standing }) => standing.counted.parts,
  parts_not_out: ({ standing }) => standing.counted.notOut,
  parts_spoilt: ({ standing }) => standing.counted.spoilt,
  standing: ({ standing }) => standing.kind,
  why: ({ standing }) => standing.why.code,
  run_now_power_pct: ({ standing }) => standing.run?.powerPct,
  run_now_mm_per_s: ({ standing }) => standing.run?.speedMmPerS,
  guess: ({ standing }) => (standing.isGuess ? 'guess' : ''),
  persons_choice: ({ entry }) => entry.personsChoice,
  note: ({ entry }) => entry.note,
  invented: ({ entry }) => (entry.isExample ? 'invented' : ''),
};

/** The book as a flat table, one line a setting. */
export const bookCsv = (rows: readonly Row[]): Generator<string> => csvTable(columns, rows);
