import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const require = createRequire(import.meta.url);
const sources = join(import.meta.dirname, '../..');

/** Every sign that stands in the sources of words and screens. */
const signsSaid = (): readonly string[] => {
  const files = ['words', 'web'].flatMap((room) =>
    readdirSync(join(sources, room), { recursive: true, encoding: 'utf8' })
      .filter((name) => /(?<!\.test)\.tsx?$/.test(name))
      .map((name) => join(sources, room, name)),
  );
  return [...new Set(files.flatMap((file) => Array.from(readFileSync(file, 'utf8'))))];
};

type Holds = (sign: string) => boolean;

/** What the rules of a stylesheet say that their typefaces hold, one rule after the other. */
const heldBy = (css: string): readonly Holds[] =>
  [...css.matchAll(/unicode-range: ([^;]*);/g)].map(([, ranges = '']) => (sign) => {
    const code = sign.codePointAt(0) ?? 0;
    return ranges.split(',').some((range) => {
      const [from = '', to = from] = range.trim().slice(2).split('-');
      return code >= Number.parseInt(from, 16) && code <= Number.parseInt(to, 16);
    });
  });

describe('the typefaces of the first view', () => {
  it('hold every sign that the page’s own words are written with, as far as the whole typefaces do', () => {
    const css = readFileSync(join(import.meta.dirname, 'typefaces/typefaces.css'), 'utf8');
    const whole = require.resolve('@fontsource-variable/besley/wght.css');
    const latin = heldBy(readFileSync(whole, 'utf8')).at(-1);
    const said = signsSaid().filter((sign) => sign > ' ' && latin?.(sign) === true);
    expect(said.length).toBeGreaterThan(80);
    const [text, display] = heldBy(css);
    expect(said.filter((sign) => text?.(sign) !== true)).toEqual([]);
    const headings = said.filter((sign) => /[\p{L}\d.,:;?!()%/&+“”’·×°–—−-]/u.test(sign));
    expect(headings.length).toBeGreaterThan(70);
    expect(headings.filter((sign) => sign !== 'µ' && display?.(sign) !== true)).toEqual([]);
  });

  it('are what the script makes of the whole typefaces as they are installed', () => {
    const script = join(sources, '../scripts/typefaces.mjs');
    const { status, stderr } = spawnSync(process.execPath, [script, '--check'], {
      encoding: 'utf8',
    });
    expect(stderr).toBe('');
    expect(status).toBe(0);
  });
});
