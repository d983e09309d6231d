import type { CallName } from '../worker/calls.ts';

/** Starts from the built page the thread that answers a call. The bundler looks for each address where it is written. */
export const startWorker = {
  fit: () => modelThread(),
  nextCard: () => modelThread(),
  order: () =>
    new Worker(new URL('../worker/order.ts', import.meta.url), { type: 'module', name: 'order' }),
  plan: () =>
    new Worker(new URL('../worker/plan.ts', import.meta.url), { type: 'module', name: 'plan' }),
  compare: () =>
    new Worker(new URL('../worker/compare.ts', import.meta.url), {
      type: 'module',
      name: 'comparison',
    }),
  explain: () =>
    new Worker(new URL('../worker/why.ts', import.meta.url), { type: 'module', name: 'why' }),
  motion: () =>
    new Worker(new URL('../worker/motion.ts', import.meta.url), { type: 'module', name: 'motion' }),
  prove: () =>
    new Worker(new URL('../worker/proof.ts', import.meta.url), { type: 'module', name: 'proof' }),
  photo: () => photoThread(),
  tones: () => photoThread(),
} satisfies Record<CallName, () => Worker>;

function photoThread(): Worker {
  return new Worker(new URL('../worker/photo.ts', import.meta.url), {
    type: 'module',
    name: 'photo',
  });
}

function modelThread(): Worker {
  return new Worker(new URL('../worker/model.ts', import.meta.url), {
    type: 'module',
    name: 'cut model',
  });
}
