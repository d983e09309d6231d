import type { OrderQuestion, OrderReply } from '../worker/orderMessages.ts';
import { useOnThread, type OnThread } from './useOnThread.ts';

/** Foretells an order on a thread of its own. Give the same object for the same question. */
export const useOrder = (question: OrderQuestion): OnThread<OrderReply> =>
  useOnThread<OrderReply>(question, orderThread);

/** Starts the thread from the built page. */
const orderThread = (): Worker =>
  new Worker(new URL('../worker/order.ts', import.meta.url), { type: 'module', name: 'order' });
