import type { AreaWords } from '../sentence.ts';

/** The place where things are kept. Codes: `storeCodes` in src/store/codes.ts. */
export const storeWords = {
  'store-newer-than-program': {
    message: (p) =>
      `The data folder was last used by a newer Throughcut: its data have version ${p('found')}, and this program knows versions up to ${p('known')}.`,
    remedy: () =>
      'Nothing was changed. Start the newer program, or name another data folder in THROUGHCUT_DATA.',
  },
  'store-not-readable': {
    message: (p) => `The data file ${p('file')} cannot be opened.`,
    remedy: () =>
      'Check that its folder exists and belongs to you, or name another data folder in THROUGHCUT_DATA.',
  },
  'store-not-writable': {
    message: (p) =>
      `The data file ${p('file')} cannot be written: it is read-only, or the disk is full.`,
    remedy: () =>
      'Nothing was changed. Make room or give yourself leave to write there, or name another data folder in THROUGHCUT_DATA.',
  },
  'store-not-ours': {
    message: (p) => `The file ${p('file')} is not a Throughcut data file, or it is damaged.`,
    remedy: () =>
      'It was left as it is. Put a backup in its place with throughcut restore --from FILE.',
  },
  'store-not-there': {
    message: (p) => `There is no data file ${p('file')}.`,
    remedy: () =>
      'Check the name. The data folder is printed when Throughcut starts; THROUGHCUT_DATA names another.',
  },
  'store-busy': {
    message: (p) => `Another program keeps the data file ${p('file')} busy.`,
    remedy: () => 'Nothing was changed. Close the other program, or try again in a moment.',
  },
  'store-row-unreadable': {
    message: (p) => `What is stored under ${p('table')} “${p('id')}” cannot be read.`,
    remedy: () =>
      'It was left as it is. Put back a backup with throughcut restore --from FILE, and please report this.',
  },
} satisfies AreaWords;
