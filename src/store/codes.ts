/** What can be the matter with the place where things are kept, before any use-case is asked. */
export const storeCodes = [
  'store-newer-than-program',
  'store-not-readable',
  'store-not-writable',
  'store-not-ours',
  'store-not-there',
  'store-gone',
  'store-name-too-long',
  'store-no-such-place',
  'store-disk-full',
  'backup-not-ours',
  'store-busy',
  'store-row-unreadable',
] as const;

export type StoreCode = (typeof storeCodes)[number];
