import { figure, text, type ProblemList } from './param.ts';

/** What can be the matter with the place where things are kept, before any use-case is asked. */
export const storeProblems = {
  'store-newer-than-program': { found: figure, known: figure },
  'store-not-readable': { file: text },
  'store-not-writable': { file: text },
  'store-not-ours': { file: text },
  'store-not-there': { file: text },
  'store-gone': { file: text },
  'store-name-too-long': { file: text },
  'store-no-such-place': { file: text },
  'store-disk-full': { file: text },
  'backup-not-ours': { file: text },
  'store-busy': { file: text },
  'store-row-unreadable': { table: text, id: text },
} as const satisfies ProblemList;

export type StoreCode = keyof typeof storeProblems;
