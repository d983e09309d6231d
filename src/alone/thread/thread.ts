/// <reference lib="webworker" />

declare const self: DedicatedWorkerGlobalScope;

/**
 * The one program of all threads of a page that works alone: which of them it is stands in its name. A page in one file carries
 * what they share once.
 */
const programs = {
  place: () => import('./place.ts'),
  sums: () => import('./sums.ts'),
  model: () => import('../../web/worker/model.ts'),
  order: () => import('../../web/worker/order.ts'),
  plan: () => import('../../web/worker/plan.ts'),
  compare: () => import('../../web/worker/compare.ts'),
  explain: () => import('../../web/worker/why.ts'),
  motion: () => import('../../web/worker/motion.ts'),
  prove: () => import('../../web/worker/proof.ts'),
  photo: () => import('../../web/worker/photo.ts'),
} as const;

export type ProgramName = keyof typeof programs;

void programs[self.name as ProgramName]();
