import { mkdirSync, rmSync } from 'node:fs';
import { readdir, readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';
import { done, refused, type Outcome } from '../core/problem.ts';
import { explainFile } from './explainFile.ts';
import { keepsOff } from './keepsOff.ts';
import { fromWhereCalled } from './paths.ts';
import { putFiles, type FileToPut } from './putFile.ts';

/** Everything that is piped in. Refuses: `stdin-empty`, `stdin-too-big`. */
export const readStdin = async (): Promise<Outcome<string>> => {
  try {
    const piped = process.stdin.isTTY ? '' : await text(process.stdin);
    return piped.trim() === '' ? refused('stdin-empty') : done(piped);
  } catch (thrown) {
    // Longer than any text can be.
    if (thrown instanceof RangeError) return refused('stdin-too-big');
    throw thrown;
  }
};

/** A text file that a person named. Refuses what `explainFile` says of reading. */
export const readTextFile = async (path: string): Promise<Outcome<string>> => {
  const file = fromWhereCalled(path);
  try {
    return done(await readFile(file, 'utf8'));
  } catch (thrown) {
    return { ok: false, problem: explainFile(thrown, path, 'read') };
  }
};

/** The JSON files of a folder that a person named, by name. Refuses what `explainFile` says of reading. */
export const jsonFilesIn = async (path: string): Promise<Outcome<readonly string[]>> => {
  const folder = fromWhereCalled(path);
  try {
    const names = await readdir(folder);
    return done(
      names
        .filter((name) => name.endsWith('.json'))
        .sort()
        .map((name) => join(folder, name)),
    );
  } catch (thrown) {
    return { ok: false, problem: explainFile(thrown, path, 'read') };
  }
};

/** A file that a person named, as it is. Refuses what `explainFile` says of reading. */
export const readBytes = async (path: string): Promise<Outcome<Uint8Array>> => {
  try {
    return done(await readFile(fromWhereCalled(path)));
  } catch (thrown) {
    return { ok: false, problem: explainFile(thrown, path, 'read') };
  }
};

/** Bytes of a file that a person named. Refuses what `explainFile` says of reading. */
export const sizeOfFile = async (path: string): Promise<Outcome<number>> => {
  try {
    return done((await stat(fromWhereCalled(path))).size);
  } catch (thrown) {
    return { ok: false, problem: explainFile(thrown, path, 'read') };
  }
};

/** Writes a text file that a person named. Refuses: `file-is-the-store`, and what `explainFile` says of writing. */
export const writeTextFile = async (path: string, content: string): Promise<Outcome<string>> => {
  const written = await put([{ file: fromWhereCalled(path), content }]);
  return written.ok ? done(fromWhereCalled(path)) : written;
};

/** A file that is about to be written. */
export interface NamedFile {
  readonly name: string;
  readonly content: string | Uint8Array;
}

/**
 * Writes several files, all or none, into a folder that a person named, made where it is missing; takes away those of
 * `gone`, which an earlier run may have left there. Refuses: `file-is-the-store`, and what `explainFile` says of writing.
 */
export const writeFiles = async (
  folder: string,
  files: readonly NamedFile[],
  { gone = [] }: { readonly gone?: readonly string[] } = {},
): Promise<Outcome<readonly string[]>> => {
  const where = fromWhereCalled(folder);
  const named = files.map(({ name, content }) => ({ file: join(where, name), content }));
  const written = await put(named, where);
  if (!written.ok) return written;
  for (const name of gone) {
    const left = join(where, name);
    if (keepsOff(left).ok) rmSync(left, { force: true });
  }
  return written;
};

const put = (files: readonly FileToPut[], folder?: string): Promise<Outcome<readonly string[]>> => {
  for (const { file } of files) {
    const free = keepsOff(file);
    if (!free.ok) return Promise.resolve(free);
  }
  try {
    if (folder !== undefined) mkdirSync(folder, { recursive: true });
    putFiles(files);
    return Promise.resolve(done(files.map(({ file }) => file)));
  } catch (thrown) {
    const problem = explainFile(thrown, files[0]?.file ?? folder ?? '', 'written');
    return Promise.resolve({ ok: false, problem });
  }
};
