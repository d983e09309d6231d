import type { CallName } from '../../web/worker/calls.ts';
import { startThread } from './startThread.ts';

/** Starts the thread that answers a call. It stands in the place of the served page's, whose threads are files of their own. */
export const startWorker = {
  fit: () => startThread('model'),
  nextCard: () => startThread('model'),
  order: () => startThread('order'),
  plan: () => startThread('plan'),
  compare: () => startThread('compare'),
  explain: () => startThread('explain'),
  motion: () => startThread('motion'),
  prove: () => startThread('prove'),
  photo: () => startThread('photo'),
  tones: () => startThread('photo'),
} satisfies Record<CallName, () => Worker>;
