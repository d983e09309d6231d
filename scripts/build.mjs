// Builds whatever changed since the last build: the compiler first, then the page. Says nothing when all is well.
import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { isFresh, root, stampFile, stateOfSources } from './freshness.mjs';

const run = (command, args) => {
  const done = spawnSync(command, args, { cwd: root, encoding: 'utf8' });
  if (done.status === 0) return;
  process.stderr.write(
    `${done.stdout ?? ''}${done.stderr ?? ''}\nThe build failed at: ${command} ${args.join(' ')}\n`,
  );
  process.exit(1);
};

if (!isFresh('all')) {
  const state = stateOfSources();
  run('node_modules/.bin/tsc', ['-b']);
  if (!isFresh('page')) {
    run('node_modules/.bin/vite', ['build', '--logLevel', 'warn']);
    // Behind it: the served page offers the one that works alone.
    run('node_modules/.bin/vite', ['build', '--logLevel', 'error', '-c', 'vite.alone.config.ts']);
  }
  mkdirSync(`${root}/build`, { recursive: true });
  writeFileSync(stampFile, JSON.stringify(state));
}
