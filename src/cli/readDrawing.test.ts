import { mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { readDrawing } from './readDrawing.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'drawing-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('a drawing that a person names', () => {
  it('is read', async () => {
    const file = join(folder, 'a.svg');
    writeFileSync(file, '<svg width="9mm" height="9mm" viewBox="0 0 9 9"><path d="M0 0h9"/></svg>');
    const read = await readDrawing(file);
    expect(read.ok && read.value.lines.length).toBe(1);
  });

  it('of 500 MB is refused before any of it is read', { timeout: 2000 }, async () => {
    const file = join(folder, 'big.svg');
    writeFileSync(file, '<svg/>');
    truncateSync(file, 500_000_000);
    const before = process.memoryUsage().rss;
    expect(await readDrawing(file)).toEqual({
      ok: false,
      problem: { code: 'drawing-too-big', params: { megabytes: 500, most: 40 } },
    });
    expect(process.memoryUsage().rss - before).toBeLessThan(100_000_000);
  });

  it('that is not there is said not to be', async () => {
    expect(await readDrawing(join(folder, 'none.svg'))).toMatchObject({
      problem: { code: 'file-not-found' },
    });
  });
});
