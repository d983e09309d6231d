import { foundBy } from '../search/sought.ts';
import type { Stock } from './stock.ts';

/** By which words a sheet is found, beside its machine's name and the codes of its cards. */
export const wordsOfStock = ({ material, batch, sheet, note }: Stock): string =>
  foundBy([material, batch, sheet, note]);
