import { omit } from '../omit.ts';
import type { ProvenSetting } from './provenSetting.ts';

/** The sheet that a kept setting, or a test of it, is of: without its machine. */
export type KeptStock = Omit<ProvenSetting['holdsFor'], 'machineId' | 'machine'>;

/** A sheet, and the machine where it is known. */
export interface StockOnMachine {
  readonly stock: KeptStock;
  readonly machineId?: string;
}

/** What a kept setting holds for, as what is kept beside it is found by. */
export const stockOnMachine = (holdsFor: ProvenSetting['holdsFor']): StockOnMachine => {
  const { machineId } = holdsFor;
  return {
    stock: omit(holdsFor, 'machineId', 'machine'),
    ...(machineId === undefined ? {} : { machineId }),
  };
};

/** Whether two sheets are of one material and nominal thickness, on one machine where both are known, whatever the batch. */
export const isOfSameStock = (one: StockOnMachine, other: StockOnMachine): boolean =>
  plain(one.stock.material) === plain(other.stock.material) &&
  one.stock.nominalThicknessMm === other.stock.nominalThicknessMm &&
  (one.machineId === undefined ||
    other.machineId === undefined ||
    one.machineId === other.machineId);

/** Whether two sheets are of one batch; undefined where a batch is not named. */
export const isSameBatch = (one: KeptStock, other: KeptStock): boolean | undefined =>
  one.batch === undefined || other.batch === undefined
    ? undefined
    : plain(one.batch) === plain(other.batch);

const plain = (text: string): string => text.trim().replace(/\s+/g, ' ').toLowerCase();
