import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';

const web = join(import.meta.dirname, '../..');

/** Every way in which an element is read out by itself as it changes. */
const live = /role=(?:"|\{?')(?:status|alert|log|timer|marquee)|role=\{|aria-live|<output\b/;

it('is the one way to be read out, beside a notice that stops and a field that refuses', () => {
  const speaking = readdirSync(web, { recursive: true, encoding: 'utf8' })
    .filter((name) => /(?<!\.test)\.tsx?$/.test(name))
    .filter((name) => live.test(readFileSync(join(web, name), 'utf8')))
    .map((name) => name.replaceAll('\\', '/'));
  expect(speaking.sort()).toEqual([
    'parts/notice/Notice.tsx',
    'parts/quantity/Field.tsx',
    'parts/said/Said.tsx',
  ]);
});
