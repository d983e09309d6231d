import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { foundAtPlace } from './foundAtPlace.ts';

it('tells a data file that is empty from one that is not there', () => {
  const folder = mkdtempSync(join(tmpdir(), 'throughcut-found-'));
  const file = join(folder, 'w.sqlite');
  const found = () => foundAtPlace({ kind: 'file', file });
  try {
    expect(found()).toBe('none');
    expect(foundAtPlace({ kind: 'file', file: join(folder, 'not', 'there') })).toBe('none');
    writeFileSync(file, '');
    expect(found()).toBe('empty');
    writeFileSync(file, 'S');
    expect(found()).toBe('kept');
    expect(foundAtPlace({ kind: 'database', url: 'postgres://nowhere' })).toBe('kept');
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
