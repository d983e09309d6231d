import { stockThicknessMm } from '../stock/stockThickness.ts';
import type { Study } from './study.ts';

/** For what earlier sheets are sought. */
export interface HistoryWish {
  /** The study that asks: it is no history of its own. It need not be stored yet. */
  readonly except: string;
  /** The example teaches the example only, and what is real teaches what is real. */
  readonly isExample: boolean;
  readonly material: string;
  readonly thicknessMm: number;
  readonly machineId: string;
}

export const historyWishOf = ({ id, isExample, stock, machineId }: Study): HistoryWish => ({
  except: id,
  isExample,
  material: stock.material,
  thicknessMm: stockThicknessMm(stock),
  machineId,
});
