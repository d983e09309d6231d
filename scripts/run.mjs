// Runs a built program: `node scripts/run.mjs build/src/cli/main.js serve`. Where the build is stale it builds first, silently.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { isFresh, root } from './freshness.mjs';

const [program, ...args] = process.argv.slice(2);

if (!isFresh('all')) {
  const built = spawnSync(process.execPath, [join(root, 'scripts/build.mjs')], {
    stdio: ['ignore', 2, 2],
  });
  if (built.status !== 0) process.exit(built.status ?? 1);
}

// Same process, so that signals and standard streams reach the program untouched.
const file = join(root, program);
process.argv = [process.execPath, file, ...args];
await import(pathToFileURL(file).href);
