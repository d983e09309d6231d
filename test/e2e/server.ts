import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** The built program as a process of its own, with an empty data folder that goes with it. */
export interface RunningServer {
  readonly base: string;
  readonly data: string;
  /** Ends the process without warning, as a power cut would. */
  readonly kill: () => Promise<void>;
  /** Asks it to end, as Ctrl-C does, and waits until it has. */
  readonly stop: () => Promise<void>;
  /** Starts it again on the same port and data. */
  readonly start: () => Promise<void>;
  readonly remove: () => Promise<void>;
}

const program = join(import.meta.dirname, '../../build/src/cli/main.js');

/** `args`: more of the command line, such as `--lan`. */
export const runServer = async (args: readonly string[] = []): Promise<RunningServer> => {
  const port = await freePort();
  const data = mkdtempSync(join(tmpdir(), 'throughcut-e2e-'));
  const base = `http://127.0.0.1:${String(port)}`;
  let running: ChildProcess | undefined;
  const end = (signal: 'SIGKILL' | 'SIGTERM'): Promise<void> =>
    new Promise((resolve) => {
      if (running === undefined) {
        resolve();
        return;
      }
      running.once('exit', () => resolve());
      running.kill(signal);
      running = undefined;
    });
  const kill = (): Promise<void> => end('SIGKILL');
  const start = async (): Promise<void> => {
    running = spawn(process.execPath, [program, 'serve', ...args], {
      env: { ...process.env, THROUGHCUT_PORT: String(port), THROUGHCUT_DATA: data },
      stdio: ['ignore', 'ignore', 'inherit'],
    });
    await answering(`${base}/api/health`);
  };
  await start();
  return {
    base,
    data,
    kill,
    stop: () => end('SIGTERM'),
    start,
    remove: async () => {
      await kill();
      rmSync(data, { recursive: true, force: true });
    },
  };
};

const answering = async (address: string): Promise<void> => {
  for (let tries = 0; tries < 200; tries += 1) {
    const up = await fetch(address).then(
      (reply) => reply.ok,
      () => false,
    );
    if (up) return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`${address} does not answer`);
};

const freePort = (): Promise<number> =>
  new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() =>
        typeof address === 'object' && address !== null
          ? resolve(address.port)
          : reject(new Error('no port')),
      );
    });
  });
