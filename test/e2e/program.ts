import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';

const main = join(import.meta.dirname, '../../build/src/cli/main.js');

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

interface RunOptions {
  readonly input?: string;
  readonly environment?: Readonly<Record<string, string>>;
  /** Called once with the running process's id. */
  readonly started?: (pid: number) => void;
}

/** Runs a command of the built program to its end. */
export const runProgram = async (
  words: readonly string[],
  { input, environment = {}, started }: RunOptions = {},
): Promise<Ran> => {
  const child = spawn(process.execPath, [main, ...words], {
    env: { ...process.env, ...environment },
    stdio: ['pipe', 'pipe', 'pipe'],
  });
  if (child.pid !== undefined) started?.(child.pid);
  // A program that does not read closes the pipe: that is its right.
  child.stdin.on('error', () => undefined);
  child.stdin.end(input ?? '');
  const [out, err, code] = await Promise.all([
    text(child.stdout),
    text(child.stderr),
    new Promise<number | null>((resolve) => {
      child.on('close', resolve);
    }),
  ]);
  return { code, out, err };
};
