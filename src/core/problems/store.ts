import { figure, text, type ProblemList } from './param.ts';

/** What can be the matter with the place where things are kept, before any use-case is asked. */
export const storeProblems = {
  'store-newer-than-program': { found: figure, known: figure },
  'store-not-readable': { file: text },
  'store-not-writable': { file: text },
  'store-not-ours': { file: text },
  'store-emptied': { file: text, sign: text },
  'store-not-there': { file: text },
  'store-gone': { file: text },
  'store-name-too-long': { file: text },
  'store-no-such-place': { file: text },
  'store-disk-full': { file: text },
  'backup-not-ours': { file: text },
  'backup-differs': { file: text, table: text },
  'backup-not-removed': { file: text, detail: text },
  'backup-folder-not-there': { folder: text },
  'store-busy': { file: text },
  'store-address-malformed': { place: text },
  'store-unreachable': { place: text },
  'store-refuses-login': { place: text },
  'store-database-not-there': { place: text },
  'store-takes-no-changes': { place: text },
  'store-schema-not-ours': { place: text },
  'store-server-full': { place: text },
  'store-server-busy': { place: text },
  'move-target-not-empty': { place: text },
  'move-same-place': {},
  'browser-store-full': {},
  'browser-store-gone': {},
  'browser-store-not-to-be-had': {},
  'store-row-unreadable': { table: text, id: text },
} as const satisfies ProblemList;

export type StoreCode = keyof typeof storeProblems;

/** What is said of a data file by its name alone. */
export type FileStoreCode = {
  [Code in StoreCode]: 'file' extends keyof (typeof storeProblems)[Code] ? Code : never;
}[StoreCode];
