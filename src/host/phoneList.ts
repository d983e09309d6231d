import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parsePhonesFile, writePhonesFile } from '../formats/phonesFile.ts';
import { putFiles } from './putFile.ts';

type Phones = ReturnType<typeof parsePhonesFile>;

/** The phones that are let in, kept beside the data and readable by its owner alone. */
export const phoneListIn = (folder: string) => {
  const file = join(folder, 'phones.json');
  return {
    read: (): Phones => (existsSync(file) ? parsePhonesFile(readFileSync(file, 'utf8')) : []),
    write: (phones: Readonly<Phones>): void =>
      putFiles([{ file, content: writePhonesFile(phones) }], { mode: 0o600 }),
  };
};
