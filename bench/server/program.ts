import { spawn, type ChildProcess } from 'node:child_process';
import { createServer } from 'node:net';
import { fileURLToPath } from 'node:url';

/** The built program, as anybody starts it: beside the built bench, or in the build where this is its source. */
const isSource = import.meta.url.endsWith('.ts');
const program = fileURLToPath(
  new URL(`../../${isSource ? 'build/' : ''}src/cli/main.js`, import.meta.url),
);

export interface Ended {
  readonly code: number | null;
  readonly out: string;
}

const environment = (data: string, port = 0): NodeJS.ProcessEnv => ({
  ...process.env,
  THROUGHCUT_DATA: data,
  THROUGHCUT_PORT: String(port),
});

/** Runs a command to its end, or until it is killed after so many milliseconds. */
export const runCommand = (
  words: readonly string[],
  data: string,
  killAfterMs?: number,
): Promise<Ended> =>
  new Promise((resolve) => {
    const child = spawn(process.execPath, [program, ...words], {
      env: environment(data),
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    let out = '';
    child.stdout.on('data', (part: Buffer) => (out += part.toString()));
    const timer =
      killAfterMs === undefined ? undefined : setTimeout(() => child.kill('SIGKILL'), killAfterMs);
    child.on('close', (code) => {
      clearTimeout(timer);
      resolve({ code, out });
    });
  });

export interface Served {
  readonly base: string;
  readonly kill: () => Promise<void>;
}

/** Starts a server on such data; gives it as soon as it answers, or at once where nobody waits for that. */
export const serve = async (data: string, { waits = true } = {}): Promise<Served> => {
  const port = await freePort();
  const child = spawn(process.execPath, [program, 'serve'], {
    env: environment(data, port),
    stdio: 'ignore',
  });
  const base = `http://127.0.0.1:${String(port)}`;
  if (waits) await answering(base, child);
  return { base, kill: () => killed(child) };
};

const killed = (child: ChildProcess): Promise<void> =>
  new Promise((resolve) => {
    if (child.exitCode !== null || child.signalCode !== null) {
      resolve();
      return;
    }
    child.once('exit', () => resolve());
    child.kill('SIGKILL');
  });

const answering = async (base: string, child: ChildProcess): Promise<void> => {
  for (let tries = 0; tries < 600 && child.exitCode === null; tries += 1) {
    const isUp = await fetch(`${base}/api/health`).then(
      ({ ok }) => ok,
      () => false,
    );
    if (isUp) return;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error('the server does not answer');
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
