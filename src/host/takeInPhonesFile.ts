import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { PhonesKept } from '../app/ports/phones.ts';
import { parsePhonesFile } from '../formats/phonesFile.ts';

/**
 * Takes phones that an earlier version kept in a file beside the data into the workshop, once: the file goes then.
 * They may go on doing all that they could.
 */
export const takeInPhonesFile = async (folder: string, kept: PhonesKept): Promise<void> => {
  const file = join(folder, 'phones.json');
  if (!existsSync(file)) return;
  const phones = parsePhonesFile(readFileSync(file, 'utf8'));
  await kept.change(async (session) => {
    for (const phone of phones) await session.add({ ...phone, role: 'runs-the-place' });
  });
  rmSync(file);
};
