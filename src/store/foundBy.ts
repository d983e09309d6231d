import type { ProvenSetting } from '../core/book/provenSetting.ts';
import { wordsOfEntry } from '../core/book/wordsOfEntry.ts';
import type { Card } from '../core/card/card.ts';
import { wordsOfCard } from '../core/card/wordsOfCard.ts';
import { airKey } from '../core/machine/air.ts';
import { settingKey } from '../core/machine/setting.ts';
import { omit } from '../core/omit.ts';
import { folded, foundBy } from '../core/search/sought.ts';
import type { Stock } from '../core/stock/stock.ts';
import { stockThicknessMm } from '../core/stock/stockThickness.ts';
import { wordsOfStock } from '../core/stock/wordsOfStock.ts';
import type { StartedOrder } from '../core/study/startedOrder.ts';
import { wordsOfOrder } from '../core/study/wordsOfOrder.ts';

/** What a list is searched, narrowed and put in order by, beside the thing as it is. */
export interface StockColumns {
  readonly found_by: string;
  readonly material: string;
  /** Without case and accents. */
  readonly material_key: string;
  /** The same of the delivery; empty: none was said. */
  readonly batch_key: string;
  readonly nominal_mm: number;
  /** What the caliper said, on the mean; null: nobody measured. */
  readonly measured_mm: number | null;
}

export const stockFoundBy = (stock: Stock): StockColumns => ({
  ...stockColumns(stock),
  found_by: wordsOfStock(stock),
  measured_mm: stock.thicknessReadingsMm.length === 0 ? null : stockThicknessMm(stock),
});

export interface EntryColumns extends StockColumns {
  /** Equal for settings that a person types alike but for the air. */
  readonly setting_key: string;
  readonly air_key: string;
}

export const entryFoundBy = (entry: ProvenSetting): EntryColumns => ({
  ...stockColumns(entry.holdsFor),
  found_by: wordsOfEntry(entry),
  measured_mm: entry.holdsFor.measuredThicknessMm ?? null,
  setting_key: settingKey(omit(entry.setting, 'air')),
  air_key: airKey(entry.setting.air),
});

/** A machine may be given another name: what is of it is found by the name that it has now. */
export const machineFoundBy = ({ name }: { readonly name?: string }) => ({
  found_by: foundBy([name]),
});

export const cardFoundBy = (card: Card) => ({ found_by: wordsOfCard(card) });

export const orderFoundBy = (order: StartedOrder) => ({ found_by: wordsOfOrder(order) });

/** A name as it is compared with itself: without case, accents and what stands around it. */
export const sameName = (name: string): string => folded(name).trim();

const stockColumns = ({
  material,
  batch,
  nominalThicknessMm,
}: Pick<Stock, 'material' | 'batch' | 'nominalThicknessMm'>) => ({
  material,
  material_key: sameName(material),
  batch_key: sameName(batch ?? ''),
  nominal_mm: nominalThicknessMm,
});
