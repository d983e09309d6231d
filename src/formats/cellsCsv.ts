import { cornerPowerPct } from '../core/machine/setting.ts';
import type { Card } from '../core/card/card.ts';
import { airKey } from '../core/machine/air.ts';
import { readCard } from '../core/reading/readCard.ts';
import type { CellAsRead } from '../core/reading/readingEvent.ts';
import { stockThicknessMm } from '../core/stock/stockThickness.ts';
import type { Study } from '../core/study/study.ts';
import { csvTable, type Columns } from './csv.ts';
import { readingColumns } from './saved/readingEvent.ts';

interface Row {
  readonly study: Study;
  readonly card: Card;
  readonly cell: CellAsRead;
}

/** What each kind of event leaves of a cell. */
const readOf = Object.fromEntries(
  Object.entries(readingColumns).map(([name, valueOf]) => [
    name,
    ({ cell }: Row) => valueOf(cell.reading),
  ]),
);

const columns: Columns<Row> = {
  study: ({ study }) => study.id,
  material: ({ study }) => study.stock.material,
  nominal_thickness_mm: ({ study }) => study.stock.nominalThicknessMm,
  thickness_mm: ({ study, card }) => card.thicknessMm ?? stockThicknessMm(study.stock),
  machine: ({ study }) => study.machine.name,
  batch: ({ card }) => card.batch,
  sheet: ({ card }) => card.sheet,
  card: ({ card }) => card.code,
  cell: ({ cell }) => cell.id,
  rung: ({ cell }) => cell.rung,
  power_pct: ({ cell }) => cell.setting.powerPct,
  power_in_corners_pct: ({ cell }) => cornerPowerPct(cell.setting),
  speed_mm_per_s: ({ cell }) => cell.setting.speedMmPerS,
  passes: ({ cell }) => cell.setting.passes,
  air: ({ cell }) => airKey(cell.setting.air),
  setting_corrected: ({ cell }) => (cell.corrected ? 'yes' : 'no'),
  shape: ({ card }) => card.shape,
  shape_length_mm: ({ card }) => card.shapeLengthMm,
  ...readOf,
  invented: ({ study }) => (study.isExample ? 'invented' : ''),
};

/** Every cell of every card as it was cut and read, one line each, for a spreadsheet. Unread cells stand with no grade. */
export const cellsCsv = (studies: readonly Study[]): Generator<string> =>
  csvTable(columns, rowsOf(studies));

function* rowsOf(studies: readonly Study[]): Generator<Row> {
  for (const study of studies)
    for (const card of study.cards)
      for (const cell of readCard(card, study.events).cells) yield { study, card, cell };
}
