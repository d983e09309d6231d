import { randomBytes } from 'node:crypto';
import { accessSync, closeSync, constants, openSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';

/**
 * Whether a file that is there, and its folder, may be written. The folder is tried by making a file in it: rights alone
 * do not tell of a disk that is mounted read-only. The file itself is not opened: closing it again would take away the
 * locks that this program holds on it.
 */
export const mayWriteBeside = (file: string): boolean => {
  const trial = join(dirname(file), `.throughcut-${randomBytes(6).toString('hex')}`);
  try {
    accessSync(file, constants.W_OK);
    closeSync(openSync(trial, 'wx', 0o600));
    rmSync(trial);
    return true;
  } catch {
    return false;
  }
};
