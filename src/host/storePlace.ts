import { dataFile, dataFolder } from './dataFolder.ts';
import { fromWhereCalled } from './paths.ts';

type Environment = Readonly<Record<string, string | undefined>>;

/** Where a workshop's things are kept: in a file of this computer, or on a database server. */
export type StorePlace =
  | { readonly kind: 'file'; readonly file: string }
  | { readonly kind: 'database'; readonly url: string };

/** The place that is set: THROUGHCUT_DATABASE, else the data file in the data folder. Throws as `dataFolder` does. */
export const storePlace = (environment: Environment = process.env): StorePlace => {
  const url = environment['THROUGHCUT_DATABASE']?.trim() ?? '';
  return url === ''
    ? { kind: 'file', file: dataFile(dataFolder(environment)) }
    : { kind: 'database', url };
};

/** The place that somebody has written: a database's address, or a data folder. */
export const placeWritten = (text: string): StorePlace =>
  /^postgres(ql)?:/i.test(text)
    ? { kind: 'database', url: text }
    : { kind: 'file', file: dataFile(fromWhereCalled(text)) };
