import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { mayWriteBeside } from '../host/mayWriteBeside.ts';

export interface PlaceToRead {
  readonly file: string;
  /** Whether it is the store itself. */
  readonly isStore: boolean;
  /** Takes the copy away again. */
  readonly remove: () => void;
}

/**
 * Where a store can be read: where it is, or, as reading a store with a log needs to write beside it, a copy of it
 * elsewhere, when its folder is read-only. Throws what the file system throws.
 */
export const writableOrCopy = (file: string): PlaceToRead => {
  if (!existsSync(file) || mayWriteBeside(file))
    return { file, isStore: true, remove: () => undefined };
  const folder = mkdtempSync(join(tmpdir(), 'throughcut-read-'));
  const remove = (): void => {
    rmSync(folder, { recursive: true, force: true });
  };
  const copy = join(folder, basename(file));
  try {
    for (const end of ['', '-wal'])
      if (existsSync(`${file}${end}`)) copyFileSync(`${file}${end}`, `${copy}${end}`);
  } catch (thrown) {
    remove();
    throw thrown;
  }
  return { file: copy, isStore: false, remove };
};
