import type { StoreCode } from '../../core/problems/store.ts';
import type { Sentences } from '../shape/sentence.ts';

/** The place where things are kept. */
export const storeWords = {
  'store-newer-than-program': {
    message: (p) =>
      `The data folder was last used by a newer Throughcut: its data have version ${p.found}, and this program knows versions up to ${p.known}.`,
    remedy: () =>
      'Nothing was changed. Start the newer program, or name another data folder in THROUGHCUT_DATA.',
  },
  'store-not-readable': {
    message: (p) => `The data file ${p.file} cannot be opened.`,
    remedy: () =>
      'Check that its folder exists and belongs to you, or name another data folder in THROUGHCUT_DATA.',
  },
  'store-not-writable': {
    message: (p) => `The data file ${p.file} cannot be written: it or its folder is read-only.`,
    remedy: () =>
      'Nothing was changed. Give yourself leave to write there, or name another data folder in THROUGHCUT_DATA. Export and backup work all the same.',
  },
  'store-name-too-long': {
    message: (p) => `The data folder’s name is too long for this system: ${p.file}.`,
    remedy: () => 'Name a data folder with a shorter path in THROUGHCUT_DATA.',
  },
  'store-no-such-place': {
    message: (p) => `Files cannot be kept at ${p.file}: the system has no disk there.`,
    remedy: () => 'Name a data folder of your own in THROUGHCUT_DATA.',
  },
  'store-disk-full': {
    message: (p) => `The disk is full: the data file ${p.file} cannot be written.`,
    remedy: () =>
      'What was stored before is still there; this was not stored. Make room, then do it again.',
  },
  'store-gone': {
    message: (p) =>
      `The data file ${p.file} is gone or has been replaced since Throughcut was started.`,
    remedy: () =>
      'This was not stored. Put the file back or its disk in again, then stop Throughcut and start it anew.',
  },
  'backup-not-ours': {
    message: (p) => `The file ${p.file} is not a Throughcut backup, or it is damaged.`,
    remedy: () => 'Nothing was changed. Choose another backup.',
  },
  'store-not-ours': {
    message: (p) => `The file ${p.file} is not a Throughcut data file, or it is damaged.`,
    remedy: () =>
      'It was left as it is. Put a backup in its place with throughcut restore --from FILE.',
  },
  'store-not-there': {
    message: (p) => `There is no data file ${p.file}.`,
    remedy: () =>
      'Check the name. The data folder is printed when Throughcut starts; THROUGHCUT_DATA names another.',
  },
  'store-busy': {
    message: (p) => `Another program keeps the data file ${p.file} busy.`,
    remedy: () => 'Nothing was changed. Close the other program, or try again in a moment.',
  },
  'store-row-unreadable': {
    message: (p) => `What is stored as ${kindOfRow(p.table)} “${p.id}” cannot be read.`,
    remedy: () =>
      'It was left as it is, and the rest works without it. To get it back, put back a backup with throughcut restore --from FILE; please report this.',
  },
} satisfies Sentences<StoreCode>;

/** What a person calls the rows of a table. */
const kindOfRow = (table: string): string =>
  new Map([
    ['study', 'sheet'],
    ['reading_event', 'reading'],
    ['tally', 'count'],
    ['proven_setting', 'kept setting'],
    ['machine_test', 'machine test'],
  ]).get(table) ?? table;
