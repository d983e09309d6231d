// Lints the whole tree in parts, each in a process of its own: all in one needs more memory than a program is given.
import { spawn } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { root } from './freshness.mjs';

const layers = readdirSync(`${root}/src`, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map((entry) => `src/${entry.name}`);
const large = ['src/core', 'src/web', 'test', 'bench'];
const small = layers.filter((layer) => !large.includes(layer));
const asked = [
  ...large.map((folder) => [folder]),
  small.slice(0, small.length / 2),
  small.slice(small.length / 2),
  ['.', ...['src', ...large].map((folder) => `--ignore-pattern=${folder}/`)],
];

const lint = (part) =>
  new Promise((resolve) => {
    spawn(process.execPath, ['node_modules/eslint/bin/eslint.js', '--max-warnings', '0', ...part], {
      cwd: root,
      stdio: 'inherit',
    }).on('close', resolve);
  });

const waiting = asked.values();
const worker = async () => {
  let allClean = true;
  for (const part of waiting) allClean = (await lint(part)) === 0 && allClean;
  return allClean;
};
const clean = await Promise.all(
  Array.from({ length: Math.min(2, availableParallelism()) }, worker),
);
process.exit(clean.every(Boolean) ? 0 : 1);
