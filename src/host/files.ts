import { readFile, writeFile } from 'node:fs/promises';
import { text } from 'node:stream/consumers';
import { done, refused, type Outcome } from '../core/problem.ts';
import { fromWhereCalled } from './paths.ts';

/** What can be the matter with a file that a person named. */
export const hostCodes = ['file-not-found', 'file-not-written', 'stdin-empty'] as const;

/** Everything that is piped in. Refuses: `stdin-empty`. */
export const readStdin = async (): Promise<Outcome<string>> => {
  const piped = process.stdin.isTTY ? '' : await text(process.stdin);
  return piped.trim() === '' ? refused('stdin-empty') : done(piped);
};

/** A text file that a person named. Refuses: `file-not-found`. */
export const readTextFile = async (path: string): Promise<Outcome<string>> => {
  try {
    return done(await readFile(fromWhereCalled(path), 'utf8'));
  } catch {
    return refused('file-not-found', { file: path });
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
    return refused('file-not-written', { file, detail });
  }
};
