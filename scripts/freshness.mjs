// Tells whether build/ was made from the sources as they stand: names, sizes and times of change, nothing read.
import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('..', import.meta.url));
export const stampFile = join(root, 'build/.stamp.json');

/** The page that works alone has the store's own rows and statements in it. */
const outsideThePage = /^(bench|test|src\/(host|print|http|cli))\//;

const listing = (folder) =>
  readdirSync(join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) return listing(path);
    const { size, mtimeMs } = statSync(join(root, path));
    return [`${path} ${size} ${mtimeMs}`];
  });

export const stateOfSources = () => {
  const own = [
    'tsconfig.base.json',
    'tsconfig.json',
    'vite.config.ts',
    'vite.alone.config.ts',
    'package-lock.json',
  ]
    .filter((file) => existsSync(join(root, file)))
    .map((file) => `${file} ${statSync(join(root, file)).size}`);
  const all = [...own, ...listing('src'), ...listing('bench'), ...listing('test')].sort();
  return { all: all.join('\n'), page: all.filter((line) => !outsideThePage.test(line)).join('\n') };
};

export const isFresh = (part) => {
  if (!existsSync(stampFile)) return false;
  return JSON.parse(readFileSync(stampFile, 'utf8'))[part] === stateOfSources()[part];
};
