import {
  linkSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readBytes, readTextFile, writeFiles, writeTextFile } from './files.ts';
import { keepsOff } from './keepsOff.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'throughcut-files-'));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const codeOf = async (work: Promise<{ ok: boolean }>): Promise<unknown> => {
  const outcome = await work;
  return 'problem' in outcome ? (outcome.problem as { code: string }).code : 'done';
};

describe('files that a person names', () => {
  it('are put in place whole, over what was there, with nothing left beside them', async () => {
    const file = join(folder, 'a.json');
    writeFileSync(file, 'old');
    linkSync(file, join(folder, 'second name'));
    symlinkSync(file, join(folder, 'link'));
    expect(await codeOf(writeTextFile(join(folder, 'link'), 'new'))).toBe('done');
    expect(readFileSync(file, 'utf8')).toBe('new');
    expect(readFileSync(join(folder, 'second name'), 'utf8')).toBe('old');
    expect(readdirSync(folder).sort()).toEqual(['a.json', 'link', 'second name']);
  });

  it('are all written or none', async () => {
    const files = [
      { name: 'one', content: '1' },
      { name: 'x'.repeat(300), content: '2' },
    ];
    expect(await codeOf(writeFiles(folder, files))).toBe('file-name-too-long');
    expect(readdirSync(folder)).toEqual([]);
  });

  it.each([
    ['nowhere', 'file-not-found'],
    ['.', 'file-is-a-folder'],
    ['x'.repeat(300), 'file-name-too-long'],
  ])('say what stands against reading %s', async (name, code) => {
    expect(await codeOf(readTextFile(join(folder, name)))).toBe(code);
    expect(await codeOf(readBytes(join(folder, name)))).toBe(code);
  });

  it.runIf(process.platform === 'linux')('say so when the disk is full', async () => {
    // A device that takes nothing.
    expect(await codeOf(writeTextFile('/dev/full', 'x'))).toBe('file-disk-full');
  });
});

describe('the store’s own files', () => {
  it('are no target, by whatever name', () => {
    const store = join(folder, 'w.sqlite');
    writeFileSync(store, '');
    symlinkSync(store, join(folder, 'link'));
    linkSync(store, join(folder, 'hard'));
    symlinkSync(folder, join(folder, 'round'));
    const refusals = [
      store,
      `${store}-wal`,
      `${store}-shm`,
      `${store}-journal`,
      `${store}.ready-1`,
      join(folder, 'link'),
      join(folder, 'hard'),
      join(folder, 'round', 'w.sqlite-wal'),
      `${folder}/./nowhere/../w.sqlite`,
    ].map((file) => keepsOff(file, store).ok);
    expect(refusals).toEqual(refusals.map(() => false));
    for (const free of ['w.json', 'w.sqlite.backup', 'sub/w.sqlite'])
      expect(keepsOff(join(folder, free), store).ok).toBe(true);
  });
});
