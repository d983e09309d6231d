import { spawn, type ChildProcess } from 'node:child_process';
import { closeSync, openSync } from 'node:fs';
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
  /** What a person at the terminal is told. */
  readonly err: string;
}

/** How a program is started where that is not as always. */
export interface Started {
  readonly environment?: NodeJS.ProcessEnv;
  /** A command that starts it: the program and its words come behind. */
  readonly by?: readonly string[];
  /** A file that is piped in. */
  readonly stdin?: string;
  readonly killAfterMs?: number;
  /** Told of the process once it runs. */
  readonly started?: (pid: number) => void;
  /** Serves phones in the network too. */
  readonly lan?: boolean;
}

const environment = (data: string, port: number): NodeJS.ProcessEnv => ({
  ...process.env,
  THROUGHCUT_DATA: data,
  THROUGHCUT_PORT: String(port),
});

const start = (
  words: readonly string[],
  env: NodeJS.ProcessEnv,
  { by = [], stdin }: Started,
): ChildProcess => {
  const [command = '', ...args] = [...by, process.execPath, program, ...words];
  const input = stdin === undefined ? 'ignore' : openSync(stdin, 'r');
  const child = spawn(command, args, { env, stdio: [input, 'pipe', 'pipe'] });
  if (input !== 'ignore') closeSync(input);
  return child;
};

/** Runs a command to its end, or until it is killed. */
export const runCommand = async (
  words: readonly string[],
  data: string,
  started: Started = {},
): Promise<Ended> => {
  const env = { ...environment(data, await freePort()), ...started.environment };
  return new Promise((resolve) => {
    const child = start(words, env, started);
    if (child.pid !== undefined) started.started?.(child.pid);
    let [out, err] = ['', ''];
    child.stdout?.on('data', (part: Buffer) => (out += part.toString()));
    child.stderr?.on('data', (part: Buffer) => (err += part.toString()));
    const { killAfterMs } = started;
    const timer =
      killAfterMs === undefined ? undefined : setTimeout(() => child.kill('SIGKILL'), killAfterMs);
    child.on('close', (code) => {
      clearTimeout(timer);
      resolve({ code, out, err });
    });
  });
};

export interface Served {
  readonly base: string;
  readonly pid: number;
  readonly kill: () => Promise<void>;
}

/** Starts a server on such data; gives it as soon as it answers. */
export const serve = async (data: string, started: Started = {}): Promise<Served> => {
  const port = await freePort();
  const child = start(
    ['serve', ...(started.lan === true ? ['--lan'] : [])],
    { ...environment(data, port), ...started.environment },
    started,
  );
  child.stdout?.resume();
  child.stderr?.resume();
  const base = `http://127.0.0.1:${String(port)}`;
  await answering(base, child);
  return { base, pid: child.pid ?? 0, kill: () => killed(child) };
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
