import { useEffect, useState } from 'react';
import type { OrderQuestion, OrderReply } from '../worker/orderMessages.ts';

/** Foretells an order on a thread of its own, which a newer question ends at once. Give the same object for the same question. */
export const useOrder = (
  question: OrderQuestion,
): { readonly reply: OrderReply | undefined; readonly isBusy: boolean } => {
  const [answered, setAnswered] = useState<{
    readonly question: OrderQuestion;
    readonly reply: OrderReply;
  }>();
  useEffect(() => {
    const thread = orderThread();
    thread.onmessage = ({ data }: MessageEvent<OrderReply>) => {
      setAnswered({ question, reply: data });
      thread.terminate();
    };
    thread.onerror = ({ message }) => setAnswered({ question, reply: { kind: 'broke', message } });
    thread.postMessage(question);
    return () => thread.terminate();
  }, [question]);
  return { reply: answered?.reply, isBusy: answered?.question !== question };
};

/** Starts the thread from the built page. */
const orderThread = (): Worker =>
  new Worker(new URL('../worker/order.ts', import.meta.url), { type: 'module', name: 'order' });
