import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's folder: up from here to its package.json, whether this runs as source or as built. */
export const projectFolder = (): string => {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!isOurs(join(folder, 'package.json')) && dirname(folder) !== folder)
    folder = dirname(folder);
  return folder;
};

/** The program's version. */
export const version = (): string =>
  manifest(join(projectFolder(), 'package.json'))?.version ?? '0';

const isOurs = (file: string): boolean => manifest(file)?.name === 'throughcut';

const manifest = (file: string): { name?: string; version?: string } | undefined => {
  try {
    return JSON.parse(readFileSync(file, 'utf8')) as { name?: string; version?: string };
  } catch {
    return undefined;
  }
};
