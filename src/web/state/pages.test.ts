import { readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, expectTypeOf, it } from 'vitest';
import { pageAt, pages } from './pages.ts';

const web = join(import.meta.dirname, '..');

describe('the addresses of the pages', () => {
  it('are filled in by name, each value as it may stand in an address', () => {
    expect(pageAt(pages.card, { id: 's 1/2', code: 'K7QX' })).toBe('/study/s%201%2F2/card/K7QX');
    expect(pageAt(pages.bed)).toBe('/bed');
    expectTypeOf(pageAt<typeof pages.card>)
      .parameter(1)
      .toEqualTypeOf<Readonly<Record<'id' | 'code', string>>>();
    // @ts-expect-error A card has a code.
    pageAt(pages.card, { id: 's1' });
    // @ts-expect-error The bed has no id.
    pageAt(pages.bed, { id: 's1' });
  });

  it('stand nowhere else in the page’s own files', async () => {
    const roots = [...new Set(Object.values(pages).map((path) => path.split('/')[1] ?? ''))];
    const literal = new RegExp(`['"\`]/(${roots.filter((root) => root !== '').join('|')})\\b`);
    const files = (await readdir(web, { recursive: true })).filter(
      (path) => /\.tsx?$/.test(path) && !/\.test\.tsx?$/.test(path) && path !== 'state/pages.ts',
    );
    expect(files.length).toBeGreaterThan(100);
    const found: string[] = [];
    for (const path of files) {
      const lines = (await readFile(join(web, path), 'utf8')).split('\n');
      for (const line of lines) if (literal.test(line)) found.push(`${path}: ${line.trim()}`);
    }
    expect(found).toEqual([]);
  });
});
