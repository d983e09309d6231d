import { mkdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';
import { done, refused, type Outcome, type Problem } from '../core/problem.ts';
import type { HostCode } from './codes.ts';
import { fromWhereCalled } from './paths.ts';

/** Everything that is piped in. Refuses: `stdin-empty`. */
export const readStdin = async (): Promise<Outcome<string>> => {
  const piped = process.stdin.isTTY ? '' : await text(process.stdin);
  return piped.trim() === '' ? refuse('stdin-empty') : done(piped);
};

/** A text file that a person named. Refuses: `file-not-found`. */
export const readTextFile = async (path: string): Promise<Outcome<string>> => {
  try {
    return done(await readFile(fromWhereCalled(path), 'utf8'));
  } catch {
    return refuse('file-not-found', { file: path });
  }
};

/** Bytes of a file that a person named. Refuses: `file-not-found`. */
export const sizeOfFile = async (path: string): Promise<Outcome<number>> => {
  try {
    return done((await stat(fromWhereCalled(path))).size);
  } catch {
    return refuse('file-not-found', { file: path });
  }
};

/** Writes a text file that a person named. Refuses: `file-not-written`. */
export const writeTextFile = async (path: string, content: string): Promise<Outcome<string>> => {
  const file = fromWhereCalled(path);
  try {
    await writeFile(file, content);
    return done(file);
  } catch (error) {
    const detail = error instanceof Error ? error.message : 'no reason given';
    return refuse('file-not-written', { file, detail });
  }
};

/** A file that is about to be written. */
export interface NamedFile {
  readonly name: string;
  readonly content: string | Uint8Array;
}

/**
 * Writes several files into a folder that a person named, made where it is missing; takes away those of `gone`, which an
 * earlier run may have left there. Refuses: `file-not-written`.
 */
export const writeFiles = async (
  folder: string,
  files: readonly NamedFile[],
  { gone = [] }: { readonly gone?: readonly string[] } = {},
): Promise<Outcome<readonly string[]>> => {
  const where = fromWhereCalled(folder);
  try {
    await mkdir(where, { recursive: true });
    await Promise.all(gone.map((name) => rm(join(where, name), { force: true })));
    const paths = files.map(({ name }) => join(where, name));
    await Promise.all(files.map(({ content }, i) => writeFile(paths[i] ?? where, content)));
    return done(paths);
  } catch (error) {
    const detail = error instanceof Error ? error.message : 'no reason given';
    return refuse('file-not-written', { file: where, detail });
  }
};

const refuse = (code: HostCode, params: Problem['params'] = {}): Outcome<never> =>
  refused(code, params);
