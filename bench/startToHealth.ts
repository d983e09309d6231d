import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const program = fileURLToPath(new URL('../src/cli/main.js', import.meta.url));

/** Median time from the start of the server's process to its first 200 on /api/health, on a fresh data folder. */
export const startToHealthMs = async (runs: number): Promise<number> => {
  const times: number[] = [];
  for (let run = -1; run < runs; run += 1) {
    const took = await once(4900 + run);
    if (run >= 0) times.push(took);
  }
  return times.sort((a, b) => a - b)[runs >> 1] ?? Number.NaN;
};

const once = async (port: number): Promise<number> => {
  const data = mkdtempSync(join(tmpdir(), 'bench-'));
  const start = performance.now();
  const server = spawn(process.execPath, [program, 'serve'], {
    env: { ...process.env, THROUGHCUT_PORT: String(port), THROUGHCUT_DATA: data },
    stdio: 'ignore',
  });
  try {
    for (;;) {
      const healthy = await fetch(`http://127.0.0.1:${String(port)}/api/health`).then(
        (reply) => reply.status === 200,
        () => false,
      );
      if (healthy) return performance.now() - start;
      if (performance.now() - start > 20_000) throw new Error('the server did not start in 20 s');
      await new Promise((resolve) => setTimeout(resolve, 10));
    }
  } finally {
    server.kill('SIGKILL');
    rmSync(data, { recursive: true, force: true });
  }
};
