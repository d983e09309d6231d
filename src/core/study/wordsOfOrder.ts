import { foundBy } from '../search/sought.ts';
import type { StartedOrder } from './startedOrder.ts';

/** By which words the sheet is found that an order was started on. */
export const wordsOfOrder = ({ name }: Pick<StartedOrder, 'name'>): string => foundBy([name]);
